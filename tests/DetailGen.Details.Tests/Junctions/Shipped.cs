using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>The shipped descriptions, solved and built.</summary>
internal static class Shipped
{
    private static readonly MaterialLibrary Materials = MaterialLibrary.Load();
    private static readonly Components Components = Components.Load();
    private static readonly Mark At = new("test", 1, 1);

    public static readonly string[] Walls = [.. Components.Ids(ComponentKind.Wall)];
    public static readonly string[] Roofs = [.. Components.Ids(ComponentKind.Roof)];
    public static readonly string[] Junctions = [.. Components.Ids(ComponentKind.Junction)];

    public static readonly Catalogue Catalogue = CatalogueOf([]);

    public static IEnumerable<(string Junction, string Wall, string Roof)> Pairings =>
        from junction in Junctions from wall in Walls from roof in Roofs select (junction, wall, roof);

    public static Catalogue CatalogueOf(IReadOnlyList<Component> more)
    {
        var faults = Components.Faults;
        if (faults.Count > 0)
        {
            throw new InvalidOperationException(string.Join("\n", faults.Select(fault => $"{fault.At}: {fault.Reason} {fault.Hint}")));
        }

        var read = Catalogue.Of([.. Components.All, .. more], StockLibrary.Load().All, Materials.Ids, []);
        return read.IsGood ? read.Value : throw new InvalidOperationException(string.Join("\n", read.Faults.Select(fault => $"{fault.At}: {fault.Reason} {fault.Hint}")));
    }

    public static Component Find(ComponentKind kind, string id) => Components.Find(kind, id)!.Value;

    public static Component Read(string yaml) => ComponentReader.Read(NodeReader.Text(yaml, "test.yaml", ReadingLimits.Usual)).Value;

    public static Preset Preset(Component junction, Component wall, Component roof, params IEnumerable<string> set) =>
        new("test", "Test", "test.yaml", junction, wall, roof,
            [.. Details.Rules.Language.Vocabulary.Circumstances.Skip(1).Select(key => new Condition(key.Name, key.Options[0], null))],
            [.. set.Select(text => Given(text, junction, wall, roof))], [], [],
            [.. new[] { wall, roof, junction }.SelectMany(component => component.Slots).Select(slot => new FilledSlot(slot, Materials.Find(slot.Default)!, null))],
            [], [], [], new SheetWishes(null, null, [], []), new TitleBlock([]), [], "mould", false, []);

    public static Preset Preset(string junction, string wall, string roof, params IEnumerable<string> set) => Preset(
        Find(ComponentKind.Junction, junction), Find(ComponentKind.Wall, wall), Find(ComponentKind.Roof, roof), set);

    public static Solution Solve(Preset preset, Catalogue? catalogue = null) => DetailSolver.Solve(preset, catalogue ?? Catalogue);

    public static Section Build(string junction, string wall, string roof, params IEnumerable<string> set) => Build(Preset(junction, wall, roof, set));

    public static Section Build(Preset preset, Catalogue? catalogue = null) => Solve(preset, catalogue) switch
    {
        Solution.Solved solved => SectionBuilder.Build(solved),
        Solution.Contradiction no => throw new InvalidOperationException(string.Join("\n", no.Members.Select(member => member.Text))),
        _ => throw new InvalidOperationException("Not proven."),
    };

    private static Given Given(string text, params Component[] components)
    {
        var (key, value) = (text.Split('=')[0], text.Split('=')[1]);
        var parameter = components.SelectMany(component => component.Parameters).First(one => one.Key == key);
        return new Given(key, SettingReader.Read(value, At, key, parameter.Unit, parameter.Options).Value, value, At, false);
    }
}
