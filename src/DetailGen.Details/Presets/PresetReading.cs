using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Presets;

/// <summary>One reading of a merged tree: looks up what the shape cannot know, and collects what is wrong. Values of the wrong shape were told already and are passed over.</summary>
internal sealed class PresetReading(PresetLayers layers, PresetContext context)
{
    private readonly List<Diagnostic> _faults = [];
    private readonly List<Diagnostic> _warnings = [];

    public IReadOnlyList<Diagnostic> Faults => _faults;

    /// <returns>Null where a component is missing; not to be used where there are faults.</returns>
    public Preset? Read(MapNode map, string path)
    {
        var junction = Find(map, ComponentKind.Junction);
        var wall = Find(map, ComponentKind.Wall);
        var roof = Find(map, ComponentKind.Roof);
        var complete = junction is not null && wall is not null && roof is not null;
        var keys = new DetailKeys(
            complete ? [wall!, roof!, junction!] : [.. new[] { wall, roof, junction }.OfType<Component>()], context.Components, complete, layers);

        var set = Settings(map, "set", keys);
        var prefer = Settings(map, "prefer", keys).Where(wish => !set.Any(given => given.Key == wish.Key)).ToList();
        var targets = Targets(map);
        var slots = new SlotFilling(context.Materials, keys, _faults).Fill(map);
        var packs = Packs(map);
        var waivers = Waivers(map);
        var conditions = PresetShape.Conditions.Select(condition => Condition(map, condition.Key, condition.Words)).ToList();
        var levels = Sound(map, "levels", new QuantityShape(QuantityKind.Length)).Select(Level).OfType<GivenLevel>().ToList();
        var sheet = Sheet(map);
        var block = new TitleBlock([.. Sound(map, "title-block", new TextShape()).Select(entry => new TitleField(entry.Key, TextOf(entry), entry.Value.At))]);
        var climate = Climate(map);
        IssueCheck.Check(block, sheet, _faults, _warnings);
        if (!complete)
        {
            return null;
        }

        return new(
            map.Text("detail") ?? "", map.Text("title") ?? Title(junction!, wall!, roof!), path, junction!, wall!, roof!, conditions, set, prefer, targets, slots, packs,
            waivers, levels, sheet, block, Revisions(map), map.Text(PresetShape.FrsiFilm) ?? PresetShape.FrsiFilms[0], map.Flag("mirror"), _warnings)
        {
            Climate = climate,
            HumidityClass = Bare(map, "humidity-class", new WordShape(PresetShape.HumidityClasses)) is { } asked ? (int)asked : null,
            AirTemperature = (double?)Bare(map, "air-temperature", PresetShape.AirTemperature),
        };
    }

    private static string Title(Component junction, Component wall, Component roof) => $"{junction.Title}, {Small(wall.Title)}, {Small(roof.Title)}";

    // "Cavity wall" inside a sentence is "cavity wall"; "PIR roof" stays
    private static string Small(string title) =>
        title.Length > 1 && char.IsLower(title[1]) ? char.ToLowerInvariant(title[0]) + title[1..] : title;

    private Component? Find(MapNode map, ComponentKind kind)
    {
        var key = kind.ToString().ToLowerInvariant();
        if (map[key] is not ScalarNode node || !ShapeCheck.Holds(node, ComponentShape.Id))
        {
            return null;
        }

        if (context.Components.Find(kind, node.Text) is not { } found)
        {
            _faults.Add(Messages.UnknownComponent(node.At, key, node.Text, context.Components.Ids(kind)));
            _faults.AddRange(context.Components.Unreadable);
            return null;
        }

        _faults.AddRange(found.Faults);
        return found.IsGood ? found.Value : null;
    }

    private List<Given> Settings(MapNode map, string group, DetailKeys keys)
    {
        var all = new List<Given>();
        foreach (var entry in Sound(map, group, new AnySettingShape()))
        {
            if (keys.Parameter(entry, group, _faults) is not { } parameter)
            {
                continue;
            }

            var (text, at) = (TextOf(entry), entry.Value.At);
            var read = SettingReader.Read(text, at, entry.Key, parameter.Unit, parameter.Options);
            _faults.AddRange(read.Faults);
            if (!read.IsGood)
            {
                continue;
            }

            if (parameter.Domain is { } domain && DomainCheck.Fault(entry.Key, read.Value, domain, text, at) is { } outside)
            {
                _faults.Add(outside);
            }
            else if (keys.IsHere(parameter))
            {
                all.Add(new(entry.Key, read.Value, text, at, layers.IsFromBase(at)));
            }
        }

        return all;
    }

    private static List<Target> Targets(MapNode map)
    {
        var all = new List<Target>();
        foreach (var target in PresetShape.Targets)
        {
            if ((map["target"] as MapNode)?[target.Key] is ScalarNode node && ShapeCheck.Holds(node, target.Shape))
            {
                all.Add(new(target.Key, QuantityReader.Read(node.Text, out _)!.Value.Number, node.At));
            }
        }

        return all;
    }

    private List<NamedPack> Packs(MapNode map)
    {
        if (map["rules"] is not ListNode list)
        {
            return [new("uk", map.At)];
        }

        var packs = list.Items.OfType<ScalarNode>().Select(node => new NamedPack(node.Text, node.At)).ToList();
        _faults.AddRange(packs.Where(pack => pack.Name.Length > 0 && !context.Packs.Contains(pack.Name, StringComparer.Ordinal))
            .Select(pack => Messages.UnknownPack(pack.At, pack.Name, context.Packs)));
        _faults.AddRange(packs.GroupBy(pack => pack.Name, StringComparer.Ordinal).SelectMany(named => named.Skip(1).Select(again => Messages.PackTwice(again.At, again.Name, named.First().At))));
        return packs;
    }

    private NamedClimate? Climate(MapNode map)
    {
        if ((map["site"] as MapNode)?["climate"] is not ScalarNode node || !ShapeCheck.Holds(node, ComponentShape.Id))
        {
            return null;
        }

        if (!context.Climates.Ids.Contains(node.Text, StringComparer.Ordinal))
        {
            _faults.Add(Messages.UnknownClimate(node.At, node.Text, context.Climates.Ids));
        }

        return new(node.Text, node.At);
    }

    private List<Waiver> Waivers(MapNode map)
    {
        var all = new List<Waiver>();
        foreach (var entry in map.Entries("waive"))
        {
            if (context.RuleIds is { } ids && !ids.Contains(entry.Key, StringComparer.Ordinal))
            {
                _faults.Add(Messages.UnknownRule(entry.KeyAt, entry.Key, ids));
            }

            if (entry.Value is MapNode waiver)
            {
                all.Add(new(entry.Key, waiver.Text("reason") ?? "", waiver.Text("by"), waiver.Text("reference"), entry.KeyAt));
            }
        }

        return all;
    }

    private static Condition Condition(MapNode map, string key, IReadOnlyList<string> words)
    {
        var dot = key.IndexOf('.', StringComparison.Ordinal);
        return (map[key[..dot]] as MapNode)?[key[(dot + 1)..]] is ScalarNode node ? new(key, node.Text, node.At) : new(key, words[0], null);
    }

    private static decimal? Bare(MapNode map, string key, Shape shape) =>
        (map["building"] as MapNode)?[key] is ScalarNode node && ShapeCheck.Holds(node, shape) ? QuantityReader.Read(node.Text, out _)?.Number : null;

    private GivenLevel? Level(Entry entry)
    {
        if (QuantityReader.Read(TextOf(entry), out _) is not { } written)
        {
            return null; // told with the form
        }

        if (written.AsLength() is { } height)
        {
            return new(entry.Key, height, entry.Value.At);
        }

        _faults.Add(Messages.NotExact(entry.Value.At, entry.Key, TextOf(entry), written));
        return null;
    }

    private static SheetWishes Sheet(MapNode map)
    {
        var sheet = map["sheet"] as MapNode;
        int? scale = sheet?["scale"] is ScalarNode node && PresetShape.Scales.Contains(node.Text, StringComparer.Ordinal)
            ? int.Parse(node.Text.AsSpan(2), System.Globalization.CultureInfo.InvariantCulture)
            : null;
        var companions = (sheet?["companions"] as ListNode)?.Items.OfType<ScalarNode>().Select(item => item.Text)
            .Where(word => PresetShape.Companions.Contains(word, StringComparer.Ordinal)).Distinct(StringComparer.Ordinal);
        return new(sheet?.Text("paper"), scale, [.. companions ?? []],
            [.. Sound(map, "sheet", new TextShape()).Where(entry => entry.Key is not ("paper" or "scale")).Select(entry => new SheetOption(entry.Key, TextOf(entry), entry.Value.At))]);
    }

    private static List<Revision> Revisions(MapNode map) =>
    [
        .. map.Maps("revisions").Where(node => node["rev"] is not null && node["text"] is not null && node["date"] is { } date && ShapeCheck.Holds(date, new DateShape()))
            .Select(node => new Revision(node.Must("rev"), node.Date("date"), node.Must("text"), node.Text("drawn"), node.Text("checked"), node.At)),
    ];

    private static IEnumerable<Entry> Sound(MapNode map, string group, Shape shape) =>
        map.Entries(group).Where(entry => entry.Value is ScalarNode && ShapeCheck.Holds(entry.Value, shape));

    private static string TextOf(Entry entry) => ((ScalarNode)entry.Value).Text;
}
