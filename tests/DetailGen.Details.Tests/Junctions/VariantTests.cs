namespace DetailGen.Details.Tests.Junctions;

public class VariantTests
{
    [Theory]
    [InlineData("metal", "parapet", "cavity-masonry", "warm-timber-deck", "coping.kind=metal", "wall.fill=partial", "roof.joists=across")]
    [InlineData("to-coping", "parapet", "cavity-masonry", "warm-timber-deck", "upstand.top=coping", "tray.discharge=outside", "roof.fall-towards=wall")]
    [InlineData("outside", "parapet", "cavity-masonry", "warm-concrete-deck", "tray.discharge=outside", "coping.fall-to=both", "roof.finish=ballast", "wall.lining=wet-plaster")]
    [InlineData("metal-solid", "parapet", "solid-masonry-insulated", "warm-concrete-deck", "coping.kind=metal", "coping.fall-to=both", "roof.finish=paving")]
    [InlineData("flashed-solid", "parapet", "solid-masonry-insulated", "warm-timber-deck", "upstand.top=flashing", "roof.joists=across")]
    [InlineData("kerb", "abutment", "cavity-masonry", "warm-timber-deck", "roof.tied-to-wall=no", "wall.fill=partial")]
    [InlineData("kerb-solid", "abutment", "solid-masonry-insulated", "warm-timber-deck", "roof.tied-to-wall=no", "roof.finish=ballast")]
    [InlineData("across", "abutment", "cavity-masonry", "warm-timber-deck", "roof.joists=across", "roof.finish=paving", "upstand.fillet=0 mm")]
    [InlineData("flashing-behind-render", "abutment", "solid-masonry-insulated", "warm-timber-deck", "upstand.insulation=10 mm", "upstand.backing=12 mm", "wall.insulation=120 mm", "flashing.thickness=1.8 mm", "flashing.clearance=10 mm", "roof.membrane=1 mm", "roof.vcl=3.49 mm", "upstand.fillet=10 mm", "upstand.head-fall=1:51")]
    public void A_variant_tiles(string name, string junction, string wall, string roof, params string[] set)
    {
        var section = Shipped.Build(junction, wall, roof, set);
        if (Environment.GetEnvironmentVariable("SECTION_PICTURES") is { } folder)
        {
            Picture.Write(section, Path.Combine(folder, $"v-{name}.json"));
        }

        Laws.Hold(section);
    }
}
