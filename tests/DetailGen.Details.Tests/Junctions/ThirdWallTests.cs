using DetailGen.Details.Parameters;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>A wall that no builder has ever heard of: nothing but a description.</summary>
public class ThirdWallTests
{
    private const string Source = "source: { document: \"made up\", confidence: memory }";

    private const string Rendered = $$"""
        id: rendered-block
        kind: wall
        title: Rendered block wall
        parameters:
          - { key: wall.render, unit: length, from: 10 mm, to: 30 mm, step: 1 mm, default: 20 mm, meaning: Render., {{Source}} }
          - { key: wall.block, unit: length, from: 100 mm, to: 300 mm, step: 5 mm, default: 215 mm, meaning: Block., {{Source}} }
          - { key: wall.plaster, unit: length, from: 5 mm, to: 30 mm, step: 1 mm, default: 13 mm, meaning: Plaster., {{Source}} }
        derived:
          - { key: wall.thickness, as: wall.render + wall.block, meaning: Wall. }
          - { key: wall.bearing-leaf, as: wall.block, meaning: Leaf. }
        materials:
          - { slot: wall.render, default: render-lime, kinds: [finish], name: Render }
          - { slot: wall.block, default: block-medium, kinds: [masonry], name: Block }
          - { slot: wall.plaster, default: plaster-light, kinds: [finish], name: Plaster }
        layers:
          - { slot: wall.render, as: cladding, name: Render, function: rain screen, roles: [finish] }
          - { slot: wall.block, as: leaf, name: Block, function: structure, roles: [structure] }
          - { slot: wall.plaster, as: lining, name: Plaster, function: finish, roles: [finish] }
        """;

    private const string Brick = $$"""
        id: solid-brick
        kind: wall
        title: Solid brick wall
        parameters:
          - { key: wall.brick, unit: length, from: 215 mm, to: 440 mm, step: 0.5 mm, default: 327.5 mm, meaning: Brickwork., {{Source}} }
        derived:
          - { key: wall.thickness, as: wall.brick, meaning: Wall. }
          - { key: wall.bearing-leaf, as: wall.brick, meaning: Leaf. }
        materials:
          - { slot: wall.brick, default: brick-outer, kinds: [masonry], name: Brickwork }
        layers:
          - { slot: wall.brick, as: leaf, course: 75 mm, name: Brickwork, function: "structure, rain screen", roles: [structure, finish] }
        """;

    [Theory]
    [InlineData(Rendered, "parapet", "warm-timber-deck")]
    [InlineData(Rendered, "parapet", "warm-concrete-deck")]
    [InlineData(Rendered, "abutment", "warm-timber-deck")]
    [InlineData(Rendered, "abutment", "warm-concrete-deck")]
    [InlineData(Brick, "parapet", "warm-timber-deck")]
    [InlineData(Brick, "parapet", "warm-concrete-deck")]
    [InlineData(Brick, "abutment", "warm-timber-deck")]
    [InlineData(Brick, "abutment", "warm-concrete-deck")]
    public void A_third_wall_needs_nothing_but_its_description(string yaml, string junction, string roof)
    {
        var wall = Shipped.Read(yaml);
        var preset = Shipped.Preset(Shipped.Find(ComponentKind.Junction, junction), wall, Shipped.Find(ComponentKind.Roof, roof));
        var section = Shipped.Build(preset, Shipped.CatalogueOf([wall]));
        if (Environment.GetEnvironmentVariable("SECTION_PICTURES") is { } folder)
        {
            Picture.Write(section, Path.Combine(folder, $"third-{wall.Id}-{junction}-{roof}.json"));
        }

        Laws.Hold(section);
        Assert.Equal(wall.Parameters.Count, section.Buildups[0].Layers.Count);
    }
}
