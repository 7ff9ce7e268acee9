using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Tests.Parameters;

public class ShippedDataTests
{
    [Fact]
    public void Every_shipped_file_of_materials_and_stock_is_whole()
    {
        Assert.Empty(Faults("presets/materials/", MaterialLibrary.ListFaults));
        Assert.Empty(Faults("presets/stock/", StockLibrary.ListFaults));
    }

    [Fact]
    public void Every_shipped_component_is_whole() => Assert.Empty(Components.Load().Faults);

    // 90 design values and the air of cavities
    [Fact]
    public void There_are_91_materials() => Assert.Equal(91, MaterialLibrary.Load().All.Count);

    [Fact]
    public void Every_material_but_air_has_a_fill_a_layer_and_a_conductivity() => Assert.All(MaterialLibrary.Load().All.Where(material => material.Id != "air"), material =>
    {
        Assert.NotEqual("", material.Material.Fill);
        Assert.Equal(2, material.Material.LayerCode.Length);
        Assert.True(material.Material.Conductivity > 0 && material.Material.Density > 0);
    });

    [Fact]
    public void Nothing_that_ships_names_a_web_address() => Assert.All(Shelf.Shipped.Under(""), file =>
    {
        Assert.DoesNotContain("http", file.Text()!, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("www.", file.Text()!, StringComparison.OrdinalIgnoreCase);
    });

    // BR 443 (2019) 3.6, as quoted in public verification notes: clay brickwork, exposed leaf, 0.77 W/mK
    [Fact]
    public void A_material_is_read_with_vapour_data_beside_it()
    {
        var brick = MaterialLibrary.Load().Find("brick-outer")!;
        Assert.Equal(("masonry", "brick", "BK", 0.77, 1700.0, "tabulated"),
            (brick.Material.Kind, brick.Material.Fill, brick.Material.LayerCode, brick.Material.Conductivity!.Value, brick.Material.Density, brick.Material.Origin));
        Assert.Equal(new(16, 10, null, "memory"), brick.Material.Vapour);
        Assert.Equal(50, MaterialLibrary.Load().Find("pe-vcl")!.Material.Vapour!.Sd);
        Assert.Equal("presets/materials/masonry.yaml", brick.At.File);
    }

    [Fact]
    public void An_entry_read_on_its_own_knows_its_line_in_the_file()
    {
        var text = Shelf.Shipped.Find("presets/materials/masonry.yaml")!.Text()!.Split('\n');
        Assert.All(MaterialLibrary.Load().All.Where(material => material.At.File.EndsWith("masonry.yaml", StringComparison.Ordinal)),
            material => Assert.Equal($"- id: {material.Id}", text[material.At.Line - 1]));
    }

    [Fact]
    public void Ids_are_unique_across_files()
    {
        Assert.Equal(Lines("presets/materials/"), MaterialLibrary.Load().Ids.Count);
        Assert.Equal(Lines("presets/stock/"), StockLibrary.Load().Ids.Count);
    }

    [Fact]
    public void Units_boards_and_joists_are_hard_cavities_and_copings_are_wishes()
    {
        var stock = StockLibrary.Load();
        Assert.All((string[])["block-thickness", "leaf-thickness", "plywood", "plywood-deck", "joist-depth", "pir-flat", "plasterboard"], id => Assert.Equal(StockForce.Hard, stock.Find(id)!.Force));
        Assert.All((string[])["cavity-width", "coping-stone-width", "dpc-width", "lead-width"], id => Assert.Equal(StockForce.Prefer, stock.Find(id)!.Force));
    }

    [Fact]
    public void A_class_gives_its_sizes_rising_in_micrometres()
    {
        Assert.Equal([9_500, 12_500, 15_000, 19_000], StockLibrary.Load().Find("plasterboard")!.Values);
        Assert.Equal("4", StockLibrary.Load().Find("lead-code")!.Sizes[1].Name);
        Assert.Equal((Unit.Ratio, 40L), (StockLibrary.Load().Find("tapered-slopes")!.Unit, StockLibrary.Load().Find("tapered-slopes")!.Values[0]));
        Assert.Equal([215_000, 102_500, 65_000], StockLibrary.Load().Find("brick-uk")!.Sizes[0].Measures);
    }

    [Fact]
    public void A_practice_adds_and_replaces_and_its_faults_are_told()
    {
        var folder = Directory.CreateTempSubdirectory("detailgen-shelf-").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(folder, "stock"));
            var file = Path.Combine(folder, "stock", "own.yaml");
            File.WriteAllText(file, "- id: own\n  force: hard\n  sizes: [10 mm]\n  meaning: Ours.\n  source: { document: Our own, confidence: memory }\n");
            var stock = StockLibrary.Load(Shelf.Shipped.With(folder).Value);
            Assert.Equal([10_000], stock.Find("own")!.Values);
            Assert.NotNull(stock.Find("plywood"));
            File.WriteAllText(Path.Combine(folder, "stock", "a.yaml"), "- id: plywood\n  force: prefer\n  sizes: [17 mm]\n  meaning: Ours.\n  source: { document: Our own, confidence: memory }\n");
            Assert.Equal([17_000], StockLibrary.Load(Shelf.Shipped.With(folder).Value).Find("plywood")!.Values);
            File.WriteAllText(file, "- id: own\n  force: hart\n  sizes: [10]\n");
            var codes = StockLibrary.Load(Shelf.Shipped.With(folder).Value).Faults.Select(fault => $"{fault.At.Line}: {fault.Code}");
            Assert.Equal(["2: unknown-choice", "1: missing-key", "1: missing-key"], codes);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        Assert.False(Shelf.Shipped.With(folder).IsGood);
    }

    private static IEnumerable<Diagnostic> Faults(string start, Func<Node, IReadOnlyList<Diagnostic>> check) =>
        Shelf.Shipped.Under(start).SelectMany(file => file.Read() is { Root: { } root } read ? [.. read.Faults, .. check(root)] : file.Read().Faults);

    private static int Lines(string start) =>
        Shelf.Shipped.Under(start).Sum(file => file.Text()!.Split('\n').Count(line => line.StartsWith("- id: ", StringComparison.Ordinal)));
}
