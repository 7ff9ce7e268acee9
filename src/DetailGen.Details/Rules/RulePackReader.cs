using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Rules;

/// <summary>Reads rule packs. All faults of all files are told at once.</summary>
public static class RulePackReader
{
    private static readonly string[] Fields = RuleShape.Keys(RuleShape.Rule);
    private static readonly string[] SourceFields = RuleShape.Keys(SourceShape.Shape);
    private static readonly string[] Classes = RuleShape.Words(RuleShape.Rule, "class");
    private static readonly string[] Severities = RuleShape.Words(RuleShape.Rule, "severity");
    private static readonly string[] Enforcements = RuleShape.Words(RuleShape.Rule, "enforcement");
    private static readonly string[] Confidences = RuleShape.Words(SourceShape.Shape, "confidence");
    private static readonly string[] ReadKinds = RuleShape.Words(SourceShape.Shape, "read-kind");

    /// <param name="files">The trees of the pack's files, in ordinal order of their names.</param>
    public static Outcome<RulePack> Read(string pack, IReadOnlyList<Node> files, Vocabulary vocabulary)
    {
        var reading = new Reading(vocabulary);
        PackHead? head = null;
        foreach (var file in files)
        {
            if (IsHead(file))
            {
                var read = PackHeadReader.Read(file);
                reading.Faults.AddRange(read.Faults);
                head = read.IsGood ? read.Value : null;
            }
            else
            {
                reading.File(file);
            }
        }

        return reading.Faults.Count == 0 ? Outcome.Good(new RulePack(pack, head, reading.Rules)) : Outcome.Bad<RulePack>(reading.Faults);
    }

    /// <summary>The file is the pack's pack.yaml.</summary>
    public static bool IsHead(Node file) => file.At.File.EndsWith("pack.yaml", StringComparison.Ordinal);

    private sealed class Reading(Vocabulary vocabulary)
    {
        private readonly Dictionary<string, Node> _seen = new(StringComparer.Ordinal);

        public List<Rule> Rules { get; } = [];

        public List<Diagnostic> Faults { get; } = [];

        public void File(Node file)
        {
            if (file is not ListNode list)
            {
                Faults.Add(RuleMessages.NotAList(file.At));
                return;
            }

            foreach (var item in list.Items)
            {
                if (item is MapNode map)
                {
                    One(map);
                }
                else
                {
                    Faults.Add(RuleMessages.NotAList(item.At));
                }
            }
        }

        private void One(MapNode map)
        {
            var before = Faults.Count;
            Known(map, Fields);
            var id = Text(map, "id") ?? "";
            if (id.Length == 0)
            {
                Faults.Add(RuleMessages.MissingField(map.At, "without a name", "id"));
                return;
            }

            var aliases = Texts(map, "aliases");
            foreach (var name in aliases.Prepend(id))
            {
                if (!_seen.TryAdd(name, map))
                {
                    Faults.Add(RuleMessages.TwiceNamed(map.At, name, _seen[name].At));
                }
            }

            var @class = (RuleClass)Math.Max(0, Array.IndexOf(Classes, Word(map, "class", Classes, "enforced")));
            var severity = (Severity)Math.Max(0, Array.IndexOf(Severities, Word(map, "severity", Severities, null, id)));
            var source = SourceOf(map, id);
            var blocks = Word(map, "enforcement", Enforcements, severity == Severity.Must && source is { Confidence: "read", ReadKind: "primary" or "secondary" } ? "error" : "warning") == "error";
            var (when, require) = (Condition(map, "when"), Condition(map, "require"));
            var (confirm, awaits) = (Text(map, "confirm"), Text(map, "awaits"));
            var text = Needed(map, id, "text");
            var reason = Needed(map, id, "reason");
            Belongs(map, id, @class);
            if (Text(map, "relaxes") is "")
            {
                Faults.Add(RuleMessages.MissingField(map.Find("relaxes")!.KeyAt, id, "relaxes"));
            }

            var simulate = Simulate(map, id, @class);
            if (Faults.Count == before)
            {
                Rules.Add(new Rule(id, aliases, @class, severity, blocks, when, require, text, confirm, awaits, reason, Text(map, "hint"), Text(map, "ask"), source!, map.At)
                {
                    Name = Text(map, "name"),
                    Corrected = Text(map, "corrected"),
                    Unbreakable = Text(map, "unbreakable"),
                    BrokenWith = map["broken-with"] is MapNode with ? new(Texts(with, "rules"), Text(with, "why") ?? "") : null,
                    Relaxes = Text(map, "relaxes"),
                    IsWhole = Text(map, "whole") == "true",
                    Yields = Text(map, "yields") == "true",
                    Simulate = simulate,
                });
            }
        }

        // exactly one of the three, and the one that its class names
        private void Belongs(MapNode map, string id, RuleClass @class)
        {
            var wanted = @class switch { RuleClass.Enforced => "require", RuleClass.ToConfirm => "confirm", _ => "awaits" };
            foreach (var field in (string[])["require", "confirm", "awaits"])
            {
                var there = map.Find(field) is not null;
                if (there != (field == wanted))
                {
                    Faults.Add(RuleMessages.WrongClass(map.Find(field)?.KeyAt ?? map.At, id, there ? $"is {Classes[(int)@class]} and yet has `{field}`" : $"is {Classes[(int)@class]} and has no `{field}`"));
                }
            }
        }

        private SimulatedLimit? Simulate(MapNode map, string id, RuleClass @class)
        {
            if (Text(map, "simulate") is not { } text)
            {
                return null;
            }

            var at = map.Find("simulate")!.Value.At;
            if (@class != RuleClass.ToConfirm)
            {
                Faults.Add(RuleMessages.WrongClass(at, id, "has `simulate` and is not to-confirm"));
            }

            var limit = SimulatedLimit.Read(text);
            if (limit is null)
            {
                Faults.Add(RuleMessages.BadSimulate(at, text));
            }

            return limit;
        }

        private Source? SourceOf(MapNode map, string id)
        {
            if (map["source"] is not MapNode source)
            {
                Faults.Add(RuleMessages.MissingField(map.At, id, "source"));
                return null;
            }

            Known(source, SourceFields);
            var document = Needed(source, id, "document");
            var confidence = Word(source, "confidence", Confidences, null, id);
            var readKind = source.Find("read-kind") is null ? null : Word(source, "read-kind", ReadKinds, null, id);
            return new Source(document, Text(source, "clause"), confidence, readKind);
        }

        private Expression? Condition(MapNode map, string field)
        {
            if (map.Find(field) is not { } entry)
            {
                return null;
            }

            if (entry.Value is not ScalarNode scalar)
            {
                Faults.Add(RuleMessages.NotAText(entry.Value.At, field));
                return null;
            }

            var at = scalar.Quoted ? ExpressionReader.Shift(scalar.At, 1) : scalar.At;
            var read = ExpressionReader.Condition(new Written(scalar.Text, at), vocabulary);
            Faults.AddRange(read.Faults);
            return read.IsGood ? read.Value : null;
        }

        private void Known(MapNode map, string[] fields)
        {
            foreach (var entry in map.Entries)
            {
                if (!fields.Contains(entry.Key, StringComparer.Ordinal))
                {
                    Faults.Add(RuleMessages.UnknownField(entry.KeyAt, entry.Key, Nearest.To(entry.Key, fields)));
                }
            }
        }

        private string? Text(MapNode map, string field)
        {
            switch (map.Find(field)?.Value)
            {
                case null:
                    return null;
                case ScalarNode scalar:
                    return scalar.Text.Trim().Length == 0 ? "" : scalar.Text; // blanks alone say nothing
                case var other:
                    Faults.Add(RuleMessages.NotAText(other.At, field));
                    return null;
            }
        }

        private string Needed(MapNode map, string rule, string field)
        {
            if (map.Find(field) is null || Text(map, field) is "")
            {
                Faults.Add(RuleMessages.MissingField(map.At, rule, field));
            }

            return Text(map, field) ?? "";
        }

        private IReadOnlyList<string> Texts(MapNode map, string field)
        {
            switch (map.Find(field)?.Value)
            {
                case null:
                    return [];
                case ListNode list when list.Items.All(item => item is ScalarNode):
                    return [.. list.Items.Cast<ScalarNode>().Select(item => item.Text)];
                case var other:
                    Faults.Add(RuleMessages.NotAText(other.At, field));
                    return [];
            }
        }

        private string Word(MapNode map, string field, string[] options, string? otherwise, string rule = "")
        {
            var written = Text(map, field);
            if (written is null && otherwise is null)
            {
                Faults.Add(RuleMessages.MissingField(map.At, rule, field));
            }
            else if (written is not null && !options.Contains(written, StringComparer.Ordinal))
            {
                Faults.Add(RuleMessages.BadWord(map[field]!.At, field, written, options));
            }

            return written ?? otherwise ?? "";
        }
    }
}
