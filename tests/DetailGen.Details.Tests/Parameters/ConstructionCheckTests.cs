using DetailGen.Details.Constructions;
using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Sections;

namespace DetailGen.Details.Tests.Parameters;

/// <summary>Constructions of a practice: what is wrong with them is told when they are read, with its place, and not by a fault of our own while a detail is built.</summary>
public sealed class ConstructionCheckTests
{
    [Theory]
    [InlineData("cavity-masonry", "\n  - key: wall.thickness\n", "\n  - key: wall.thicknes\n", "unfinished-construction", "wall.thickness")]
    [InlineData("cavity-masonry", "- key: tie.length", "- key: tie.long", "unfinished-construction", "tie.length")]
    [InlineData("cavity-masonry", "slot: wall.inner-leaf, as", "slot: wall.iner-leaf, as", "unknown-slot", "wall.iner-leaf")]
    [InlineData("cavity-masonry", "head-slot: wall.inner-leaf-head", "head-slot: wall.head", "unknown-slot", "wall.head")]
    [InlineData("cavity-masonry", "centres: wall.dab-centres", "centres: wall.dabs", "unknown-size", "wall.dabs")]
    [InlineData("cavity-masonry", "diameter: tie.diameter", "diameter: tie.size", "unknown-size", "tie.size")]
    [InlineData("cavity-masonry", "over: [tie.horizontal-spacing,", "over: [tie.spacing,", "unknown-size", "tie.spacing")]
    [InlineData("cavity-masonry", "thickness: wall.clear-cavity", "thickness: wall.clear", "unknown-size", "wall.clear")]
    [InlineData("warm-timber-deck", "as: firring", "as: screed", "unfinished-construction", "firring")]
    [InlineData("warm-timber-deck", "as: vapour-control", "as: ceiling", "unfinished-construction", "vapour-control")]
    [InlineData("warm-timber-deck", "- key: roof.board-stagger", "- key: roof.stagger", "unfinished-construction", "roof.board-stagger")]
    [InlineData("warm-concrete-deck", "- key: roof.slab\n", "- key: roof.slabs\n", "unknown-size", "roof.slab")]
    public void What_a_construction_lacks_is_told_where_it_stands(string file, string right, string wrong, string code, string named)
    {
        var text = Shelf.Shipped.Under($"presets/constructions/{file}.yaml").Single().Text()!.ReplaceLineEndings("\n");
        Assert.Equal(2, text.Split(right).Length);
        Assert.Empty(Faults(text));
        var faults = Faults(text.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Contains(faults, fault => fault.Code == code && fault.Reason.Contains(named, StringComparison.Ordinal) && fault.At is { File: "own.yaml", Line: > 0 });
    }

    [Fact]
    public void A_wall_without_layers_is_no_wall() =>
        Assert.Contains(Faults("id: own\nkind: wall\ntitle: Own\n"), fault => fault.Code == "unfinished-construction");

    [Theory]
    [InlineData("parapet", false)]
    [InlineData("my-parapet", true)]
    public void A_junction_of_a_practice_is_one_that_can_be_drawn(string id, bool refused)
    {
        var shipped = Shelf.Shipped.Under("junctions/").Single(file => file.Text()!.Contains("id: parapet", StringComparison.Ordinal)).Text()!;
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            File.WriteAllText(Path.Combine(folder.CreateSubdirectory("constructions").FullName, "own.yaml"), shipped.ReplaceLineEndings("\n").Replace("id: parapet\n", $"id: {id}\n", StringComparison.Ordinal));
            var faults = Components.Load(Shelf.Shipped.With(folder.FullName).Value).Faults;
            Assert.Equal(refused ? ["no-builder"] : [], faults.Select(fault => fault.Code));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The words of a file and the names in the code are one list.</summary>
    [Fact]
    public void Every_behaviour_has_its_word()
    {
        Assert.Equal(Enum.GetNames<WallBehaviour>().Select(LayerShape.Hyphened), LayerShape.OfWall);
        Assert.Equal(Enum.GetNames<RoofBehaviour>().Select(LayerShape.Hyphened), LayerShape.OfRoof);
        Assert.Contains("air-barrier", LayerShape.Roles);
        Assert.Equal(["solid", "sheet", "air", "bridged"], Enum.GetNames<LayerKind>().Select(LayerShape.Hyphened));
    }

    private static IReadOnlyList<Diagnostic> Faults(string text) => ConstructionCheck.Of(ComponentReader.Read(NodeReader.Text(text, "own.yaml", ReadingLimits.Usual))).Faults;
}
