using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Sheets;

/// <summary>Reads <c>presets/sheets/</c>.</summary>
public static class SheetDataReader
{
    public static Outcome<SheetData> Load() => Load(Shelf.Shipped);

    /// <returns>The faults of all files where there are any.</returns>
    public static Outcome<SheetData> Load(Shelf shelf)
    {
        var faults = new List<Diagnostic>();
        var layers = Items(shelf, "layers", SheetShape.Layers, faults);
        var inks = Items(shelf, "inks", SheetShape.InkList, faults);
        var formats = Items(shelf, "formats", SheetShape.Formats, faults);
        var sizes = Items(shelf, SizesFile, SheetShape.TextSizes, faults);
        var logo = Logo(shelf, faults);
        var typeface = TypefaceReader.Read(shelf.Find(Path("typeface")), faults);
        if (faults.Count == 0)
        {
            Misfits(sizes, faults);
        }

        if (faults.Count > 0)
        {
            return Outcome.Bad<SheetData>(faults);
        }

        return Outcome.Good(new SheetData([.. layers.Select(Layer)], [.. inks.Select(Ink)], [.. formats.Select(Format)], [.. sizes.Select(TextSize)]) { Logo = logo, Typeface = typeface });
    }

    private const string SizesFile = "text-sizes";

    private static string Path(string name) => $"presets/sheets/{name}.yaml";

    private static List<MapNode> Items(Shelf shelf, string name, ListShape shape, List<Diagnostic> faults)
    {
        var path = Path(name);
        var read = shelf.Find(path)?.Read() ?? new(null, [Messages.NoSuchFile(new(path, 1, 1))]);
        IReadOnlyList<Diagnostic> found = read.Root is { } root ? [.. read.Faults, .. ShapeCheck.Check(root, shape)] : read.Faults;
        if (found.Count > 0)
        {
            faults.AddRange(found);
            return [];
        }

        var items = ((ListNode)read.Root!).Items.Cast<MapNode>().ToList();
        Twice(items, ((MapShape)shape.Item).Fields[0].Key, faults);
        return items;
    }

    // Only a practice has one.
    private static LogoRow[] Logo(Shelf shelf, List<Diagnostic> faults)
    {
        if (shelf.Find(Path("logo")) is not { } file)
        {
            return [];
        }

        var read = file.Read();
        List<Diagnostic> found = [.. read.Faults, .. read.Root is { } root ? ShapeCheck.Check(root, SheetShape.Logo) : []];
        List<MapNode> items = found.Count == 0 ? [.. ((ListNode)read.Root!).Items.Cast<MapNode>()] : [];
        foreach (var item in items)
        {
            var (count, least) = (((ListNode)item["points"]!).Items.Count, item.Must("shape") == SheetShape.LogoShapes[0] ? 2 : 3);
            if (count % 2 != 0 || count < 2 * least)
            {
                found.Add(Messages.LogoPoints(item["points"]!.At, item.Must("shape"), count, least));
            }
        }

        LogoRow[] rows = found.Count == 0 ? [.. items.Select(LogoShape)] : [];
        if (found.Count == 0 && rows.All(row => row.Points.All(point => point is (0, 0))))
        {
            found.Add(Messages.LogoWithoutSize(read.Root!.At));
        }

        faults.AddRange(found);
        return rows;
    }

    private static LogoRow LogoShape(MapNode node)
    {
        var numbers = Numbers(node["points"]!);
        return new(node.Must("shape"), [.. Enumerable.Range(0, numbers.Length / 2).Select(i => (numbers[2 * i], numbers[2 * i + 1]))]);
    }

    private static void Twice(IReadOnlyList<MapNode> items, string key, List<Diagnostic> faults)
    {
        var seen = new Dictionary<string, Node>(StringComparer.Ordinal);
        foreach (var item in items)
        {
            if (!seen.TryAdd(item.Must(key), item))
            {
                faults.Add(Messages.DuplicateKey(item.At, item.Must(key), seen[item.Must(key)].At));
            }
        }
    }

    // Titles are no smaller than what they stand over, and a print that is made smaller stays readable.
    private static void Misfits(List<MapNode> sizes, List<Diagnostic> faults)
    {
        foreach (var row in sizes)
        {
            foreach (var (key, under) in new[] { ("titles", "notes"), ("numbers", "titles") })
            {
                if (row.Number(key) < row.Number(under))
                {
                    faults.Add(Messages.SmallerText(row[key]!.At, key, row.Number(key)!.Value, under, row.Number(under)!.Value));
                }
            }

            if (row.Must("use") == SheetShape.ReducedPrint && row.Number("notes") < SheetShape.LeastReduced)
            {
                faults.Add(Messages.SmallInReducedPrint(row["notes"]!.At, row.Number("notes")!.Value, SheetShape.LeastReduced));
            }
        }

        foreach (var use in SheetShape.Uses.Where(use => sizes.TrueForAll(row => row.Must("use") != use)))
        {
            faults.Add(Messages.NoTextSizes(sizes.Count > 0 ? sizes[^1].At : new(Path(SizesFile), 1, 1), use));
        }
    }

    private static TextSizeRow TextSize(MapNode node) =>
        new(node.Must("use"), Number(node, "notes"), Number(node, "titles"), Number(node, "numbers"), Number(node, "field-labels"), node.At);

    private static LayerRow Layer(MapNode node) => new(
        node.Must("row"), node.Must("name"), Number(node, "width"), Number(node, "width-a1"), node.Must("type"), node.Must("ink"), node.Text("plotted") != "false",
        node.Must("holds"), node.At);

    private static InkRow Ink(MapNode node) => new(node.Must("ink"), node.Must("colour"), node.Must("holds"), node.At);

    private static FormatRow Format(MapNode node)
    {
        var (trimmed, untrimmed) = (Numbers(node["trimmed"]!), Numbers(node["untrimmed"]!));
        var (border, grid) = ((MapNode)node["border"]!, (MapNode)node["grid"]!);
        return new(node.Must("paper"), trimmed[0], trimmed[1], untrimmed[0], untrimmed[1], Number(border, "left"), Number(border, "others"),
            (int)Number(grid, "long"), (int)Number(grid, "short"), [.. node.Entries("zones").Select(Zone)], node.At);
    }

    private static ZoneRow Zone(Entry entry)
    {
        var sides = Numbers(entry.Value);
        return new(entry.Key, sides[0], sides[1], sides[2], sides[3]);
    }

    private static double Number(MapNode node, string key) => (double)node.Number(key)!;

    private static double[] Numbers(Node node)
    {
        var items = ((ListNode)node).Items;
        var numbers = new double[items.Count];
        for (var i = 0; i < numbers.Length; i++)
        {
            numbers[i] = (double)Quantities.QuantityReader.Read(((ScalarNode)items[i]).Text, out _)!.Value.Number;
        }

        return numbers;
    }
}
