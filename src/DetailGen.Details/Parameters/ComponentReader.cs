using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>Makes a component of a tree.</summary>
public static class ComponentReader
{
    public static Outcome<Component> Read(ReadText text)
    {
        IReadOnlyList<Diagnostic> faults = text.Root is { } root ? [.. text.Faults, .. ShapeCheck.Check(root, ComponentShape.Shape)] : text.Faults;
        if (faults.Count > 0)
        {
            return Outcome.Bad<Component>(faults);
        }

        var map = (MapNode)text.Root!;
        var own = new List<Diagnostic>();
        var component = new Component(
            map.Must("id"), KindOf(map.Must("kind"))!.Value, map.Must("title"),
            [.. map.Maps("parameters").Select(node => Parameter(node, own))],
            [.. map.Maps("derived").Select(node => Derived(node, own))],
            [.. map.Maps("claims").Select(node => new Claim(node.Must("id"), node.Expression("when"), node.Expression("require")!, node.Must("reason"), node.At))],
            [.. map.Maps("materials").Select(node => new Slot(node.Must("slot"), node.Must("default"), node.Words("kinds"), node.Must("name"), node.Expression("when"), node.At) { Follows = node.Text("follows") })],
            map["layers"] as ListNode,
            [.. map.Maps("words").Select(node => new PartWords(node.Must("part"), node.Text("note"), node.Text("purpose"), node.Text("without"), node.Expression("when"), node.At))],
            map.At);
        Twice(component.Parameters.Select(item => new Named(item.Key, item.At)).Concat(component.Derived.Select(item => new Named(item.Key, item.At))), own);
        Twice(component.Claims.Select(item => new Named(item.Id, item.At)), own);
        Twice(component.Slots.Select(item => new Named(item.When is { } when ? $"{item.Key} when {when}" : item.Key, item.At)), own);
        own.AddRange(Behaviours(component));
        return own.Count == 0 ? Outcome.Good(component) : Outcome.Bad<Component>(own);
    }

    // a layer of a wall cannot behave as one of a roof
    private static IEnumerable<Diagnostic> Behaviours(Component component)
    {
        var words = component.Kind == ComponentKind.Wall ? LayerShape.OfWall : LayerShape.OfRoof;
        return (component.Layers?.Items ?? []).Cast<MapNode>().Where(layer => !words.Contains(layer.Must("as"), StringComparer.Ordinal))
            .Select(layer => Messages.UnknownChoice(layer["as"]!.At, "layers.as", layer.Must("as"), words));
    }

    private static Parameter Parameter(MapNode node, List<Diagnostic> faults)
    {
        var key = node.Must("key");
        var unit = UnitOf(node.Must("unit"));
        var options = node.Words("options");
        if (unit == Unit.Choice != options.Count > 0)
        {
            faults.Add(Messages.OptionsForChoice(node.At, key));
        }

        var domain = unit == Unit.Choice ? null : Domain(node, key, unit, faults);
        Setting? Value(MapNode from, string name)
        {
            if (from[name] is not ScalarNode scalar)
            {
                return null;
            }

            var read = SettingReader.Read(scalar.Text, scalar.At, key, unit, options);
            if (!read.IsGood)
            {
                faults.AddRange(read.Faults);
                return null;
            }

            if (domain is not null && DomainCheck.Fault(key, read.Value, domain, scalar.Text, scalar.At) is { } fault)
            {
                faults.Add(fault);
            }

            return read.Value;
        }

        var usual = Value(node, "default") ?? (options.Count > 0 ? Setting.Choice(options[0]) : null);
        var cases = new List<DefaultCase>();
        foreach (var item in node.Maps("default-when"))
        {
            if (Value(item, "value") is { } value)
            {
                cases.Add(new(item.Expression("when")!, value));
            }
        }

        return new(key, unit, domain, options, node.Text("stock"),
            [.. node.Entries("stock-by-material").Select(entry => new MaterialStock(entry.Key, ((ScalarNode)entry.Value).Text))], usual,
            cases, node.Expression("when"), node.Must("meaning"), SourceShape.Read((MapNode)node["source"]!), node.At)
        {
            Slot = node.Text("slot") ?? key,
            IsDefaultLast = node.Flag("default-last"),
            IsDefaultFirst = node.Flag("default-first"),
        };
    }

    private static Domain? Domain(MapNode node, string key, Unit unit, List<Diagnostic> faults)
    {
        long? Bound(string name)
        {
            if (node[name] is not ScalarNode scalar)
            {
                faults.Add(Messages.MissingKey(node.At, name, key));
                return null;
            }

            var read = SettingReader.Read(scalar.Text, scalar.At, $"{key} {name}", unit, []);
            faults.AddRange(read.Faults);
            return read.IsGood ? read.Value.Number : null;
        }

        var (from, to) = (Bound("from"), Bound("to"));
        var step = unit == Unit.Length ? Bound("step") : node["step"] is null or ScalarNode { Text: "1" } ? 1 : Bound("step");
        if (from is null || to is null || step is null)
        {
            return null;
        }

        if (to < from || step <= 0)
        {
            faults.Add(Messages.EmptyDomain(node.At, key));
            return null;
        }

        return new(from.Value, to.Value, step.Value);
    }

    private static Derived Derived(MapNode node, List<Diagnostic> faults)
    {
        var key = node.Must("key");
        var lone = node.Expression("as");
        var cases = node.Maps("cases").Select(item => new DerivedCase(item.Expression("when"), item.Expression("as")!)).ToList();
        if (lone is null == (cases.Count == 0))
        {
            faults.Add(Messages.OneOf(node.At, key, "as", "cases"));
        }

        return new(key, lone is null ? cases : [new(null, lone)], node.Text("meaning") ?? "", node.At);
    }

    /// <summary>Null where it is none.</summary>
    internal static ComponentKind? KindOf(string? word) => word switch
    {
        "wall" => ComponentKind.Wall,
        "roof" => ComponentKind.Roof,
        "junction" => ComponentKind.Junction,
        _ => null,
    };

    private static Unit UnitOf(string word) => word switch
    {
        "length" => Unit.Length,
        "ratio" => Unit.Ratio,
        "count" => Unit.Count,
        _ => Unit.Choice,
    };

    private static void Twice(IEnumerable<Named> all, List<Diagnostic> faults)
    {
        var seen = new Dictionary<string, Named>(StringComparer.Ordinal);
        foreach (var item in all)
        {
            if (!seen.TryAdd(item.Key, item))
            {
                faults.Add(Messages.DuplicateKey(item.At, item.Key, seen[item.Key].At));
            }
        }
    }

    private sealed record Named(string Key, Mark At);
}
