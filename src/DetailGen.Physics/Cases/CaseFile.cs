using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using DetailGen.Physics.Fields;
using DetailGen.Physics.Layers;
using DetailGen.Physics.Moisture;

namespace DetailGen.Physics.Cases;

/// <summary>Which kinds of case a file is asked for; cases of other kinds in it are passed over.</summary>
public enum CaseMatter
{
    /// <summary>Kinds <c>heat2d</c> and <c>u-value</c>.</summary>
    Heat,

    /// <summary>Kind <c>moisture</c>.</summary>
    Moisture,
}

/// <summary>The answers to a case file.</summary>
/// <param name="Json">One document, LF, one line feed at the end; null where the file has faults, for then nothing is calculated from it.</param>
/// <param name="Faults">In the order of the file.</param>
/// <param name="Cases">One for each answer, in the order of the file.</param>
public sealed record CaseAnswers(string? Json, ImmutableArray<CaseFault> Faults, ImmutableArray<AnsweredCase> Cases)
{
    /// <summary>0 done, 1 a check of the file itself fails, 2 the input is wrong.</summary>
    public int Status => Json is null ? 2 : Cases.Any(answered => answered.FailedChecks.Length > 0) ? 1 : 0;
}

/// <summary>An answer in short, for people.</summary>
/// <param name="Figures">Name and value with unit; a quantity that does not exist is left out.</param>
/// <param name="Checks">How many comparisons the case asks for.</param>
/// <param name="FailedChecks">A sentence for each that fails.</param>
public sealed record AnsweredCase(
    string Id, string Kind, string Title, ImmutableArray<(string Name, string Text)> Figures, ImmutableArray<string> Warnings, int Checks, ImmutableArray<string> FailedChecks);

/// <summary>Stand-alone cases of heat and moisture: reads a file, calculates, answers, and compares with what the file expects.</summary>
public static class CaseFile
{
    /// <summary>Largest file that is read, in bytes.</summary>
    public const int LargestFile = WrittenReader.Largest;

    private static readonly string[] SharedKeys = ["id", "kind", "title", "materials", "reference", "expected"];
    private static readonly string[] Kinds = ["heat2d", "u-value", "moisture"];
    private static readonly JsonWriterOptions Layout = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Answers every case of the kinds asked for, or tells all faults at once.</summary>
    /// <param name="text">UTF-8.</param>
    /// <param name="file">Name of the file for messages.</param>
    /// <param name="only">Ids to pick; empty for all.</param>
    public static CaseAnswers Answer(byte[] text, string file, CaseMatter matter, IReadOnlyCollection<string> only)
    {
        var faults = new Faults(file);
        if (text.Length > LargestFile)
        {
            faults.Add(0, 0, null, null, Messages.TooLong(LargestFile));
            return Refused(faults);
        }

        if (WrittenReader.Read(text, faults) is not { } root || faults.Count > 0)
        {
            return Refused(faults);
        }

        if (root is not Written.Map map)
        {
            faults.Add(root, null, Messages.NotAnObject());
            return Refused(faults);
        }

        var answers = Picked(map, matter, only, faults).Select(found => Answer(found.Case, found.Id, found.Kind, faults)).ToList();
        if (faults.Count > 0)
        {
            return Refused(faults);
        }

        var good = answers.OfType<Answered>().ToList();
        var document = map.Get("cases") is null ? good[0].Json : new JsonObject { ["cases"] = new JsonArray([.. good.Select(answer => answer.Json)]) };
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Layout))
        {
            document.WriteTo(writer);
        }

        return new(Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n", [], [.. good.Select(answer => answer.Short)]);
    }

    private static CaseAnswers Refused(Faults faults) => new(null, [.. faults.All], []);

    /// <summary>The cases to answer, in the order of the file.</summary>
    private static List<(Written.Map Case, string Id, string Kind)> Picked(Written.Map map, CaseMatter matter, IReadOnlyCollection<string> only, Faults faults)
    {
        string[] wanted = matter == CaseMatter.Heat ? ["heat2d", "u-value"] : ["moisture"];
        var all = Named(map, faults);
        var matching = all.Where(found => wanted.Contains(found.Kind, StringComparer.Ordinal)).ToList();
        var others = all.Where(found => only.Contains(found.Id, StringComparer.Ordinal) && !matching.Contains(found)).Select(found => found.Id).ToList();
        foreach (var id in faults.Count == 0 ? others : [])
        {
            faults.Add(0, 0, "--only", id, Messages.OtherVerb(id, matter == CaseMatter.Heat ? "moisture" : "heat"));
        }

        if (faults.Count == 0 && matching.Count == 0)
        {
            faults.Add(map, "kind", Messages.NoMatchingCase(wanted));
        }

        string[] ids = [.. matching.Select(found => found.Id)];
        foreach (var id in faults.Count == others.Count ? only.Where(id => !ids.Contains(id, StringComparer.Ordinal) && !others.Contains(id)) : [])
        {
            faults.Add(0, 0, "--only", id, Messages.NoSuchCase(id, ids));
        }

        return only.Count == 0 ? matching : [.. matching.Where(found => only.Contains(found.Id, StringComparer.Ordinal))];
    }

    /// <summary>Every case with its id and kind, of whatever kind.</summary>
    private static List<(Written.Map Case, string Id, string Kind)> Named(Written.Map map, Faults faults)
    {
        var file = new Fields(map, "", faults);
        if (!file.Has("cases"))
        {
            return Id(file, new HashSet<string>(StringComparer.Ordinal)) is { } id && Kind(file) is { } kind ? [(map, id, kind)] : [];
        }

        if (file.Number("format") is { } format && format != 1)
        {
            file.Fault("format", Messages.UnknownFormat(map.Get("format")!.Shown));
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        var found = new List<(Written.Map, string, string)>();
        foreach (var (item, path) in file.NeededList("cases"))
        {
            if (file.MapOf(item, path) is { } one && Id(one, seen) is { } id && Kind(one) is { } kind)
            {
                found.Add((one.At, id, kind));
            }
        }

        return found;
    }

    private static string? Id(Fields fields, HashSet<string> seen)
    {
        if (fields.NeededWords("id") is not { } id)
        {
            return null;
        }

        if (id.Length == 0 || id.Any(letter => letter is not (>= 'a' and <= 'z' or >= '0' and <= '9' or '-')))
        {
            fields.Fault("id", Messages.BadId(id));
        }

        if (!seen.Add(id))
        {
            fields.Fault("id", Messages.IdTwice(id));
        }

        return id;
    }

    private static string? Kind(Fields fields) => fields.Has("kind") ? fields.Choice("kind", Kinds) : fields.Missing<string?>("kind", null);

    /// <summary>An answer as JSON and in short.</summary>
    private sealed record Answered(JsonObject Json, AnsweredCase Short);

    private static Answered? Answer(Written.Map map, string id, string kind, Faults faults)
    {
        var before = faults.Count;
        faults.Case = id;
        var fields = new Fields(map, "", faults, [.. SharedKeys, .. kind switch { "heat2d" => FieldCaseReader.Keys, "u-value" => UValueCaseReader.Keys, _ => MoistureCaseReader.Keys }]);
        var title = fields.Words("title") ?? "";
        _ = fields.Map("reference");
        var expected = Expectation.Read(fields);
        var found = kind switch
        {
            "heat2d" => Heat(fields, id, faults),
            "u-value" => Transmittance(fields, faults),
            _ => Moisture(fields, faults),
        };
        if (found is { } figures && (Boundless(figures.Result, "result") ?? Boundless(figures.Points, "points")) is { } path)
        {
            faults.Add(map, null, new(Messages.Boundless(path), Messages.BoundlessHint));
        }

        faults.Case = null;
        if (faults.Count > before || found is not { } calculated)
        {
            return null;
        }

        var answer = new JsonObject { ["id"] = id, ["kind"] = kind, ["title"] = title, ["result"] = calculated.Result, ["points"] = calculated.Points };
        var warnings = new JsonArray([.. calculated.Warnings.Select(warning => JsonValue.Create(warning))]);
        answer["warnings"] = warnings; // here already, for an expectation may look at it
        (JsonObject Entry, bool Holds)[] checks = [.. expected.Select(one => one.Check(answer))];
        answer.Remove("warnings");
        answer["checks"] = new JsonArray([.. checks.Select(check => check.Entry)]);
        answer["warnings"] = warnings;
        return new(answer, new(
            id, kind, title, CaseFigures.Of(kind, calculated.Result), [.. calculated.Warnings], checks.Length,
            [.. checks.Where(check => !check.Holds).Select(check => Messages.CheckFails(check.Entry))]));
    }

    /// <summary>The path of a figure that numbers cannot hold, as those of absurd input are; null where there is none.</summary>
    private static string? Boundless(JsonNode? node, string path) => node switch
    {
        JsonObject map => map.Select(pair => Boundless(pair.Value, $"{path}.{pair.Key}")).FirstOrDefault(found => found is not null),
        JsonArray list => list.Select((item, i) => Boundless(item, string.Create(CultureInfo.InvariantCulture, $"{path}.{i}"))).FirstOrDefault(found => found is not null),
        JsonValue value when value.TryGetValue(out double number) && !double.IsFinite(number) => path,
        _ => null,
    };

    private readonly record struct Calculated(JsonObject Result, JsonObject Points, IReadOnlyList<string> Warnings);

    private static Calculated? Transmittance(Fields fields, Faults faults)
    {
        var before = faults.Count;
        var element = UValueCaseReader.Read(fields);
        return faults.Count == before && Found(element, fields, "", faults) is { } found
            ? new(ElementAnswer.Of(element, found), [], [.. ElementAnswer.Warnings(element, found)])
            : null;
    }

    private static Calculated? Moisture(Fields fields, Faults faults)
    {
        if (MoistureCaseReader.Read(fields, faults) is not { } asked)
        {
            return null;
        }

        var surface = SurfaceCriterion.Of(asked.Climate, asked.SurfaceHumidity);
        var year = asked.Interstitial is { } build ? Condensation.Of(build) : null;
        return new(MoistureAnswer.Of(asked.Climate, surface, year), [], [.. MoistureAnswer.Warnings(surface), .. MoistureAnswer.Warnings(asked.Climate, asked.Interstitial, year)]);
    }

    private static Calculated? Heat(Fields fields, string id, Faults faults)
    {
        var before = faults.Count;
        var asked = FieldCaseReader.Read(fields, id, faults);
        if (faults.Count > before)
        {
            return null;
        }

        ElementTransmittance?[] flanking = [.. asked.Flanking.Select((element, i) => Found(element.Element, fields, $"flanking.{i}.", faults))];
        if (faults.Count > before)
        {
            return null;
        }

        switch (FieldEngine.Solve(asked))
        {
            case FieldOutcome.Solved { Answer: var found }:
                return new(FieldResult.Of(asked, found, [.. flanking.Select(element => element!.Final)]), FieldResult.Points(asked, found), found.Warnings);
            case FieldOutcome.Refused refused:
                foreach (var fault in refused.Faults)
                {
                    faults.Add(Place(fields.At, fault.Path), fault.Path.Length == 0 ? null : fault.Path, new(fault.Reason, fault.Hint));
                }

                return null;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static ElementTransmittance? Found(Element element, Fields fields, string prefix, Faults faults)
    {
        if (CombinedMethod.Of(element) is TransmittanceOutcome.Found found)
        {
            return found.Result;
        }

        foreach (var fault in ((TransmittanceOutcome.Refused)CombinedMethod.Of(element)).Faults)
        {
            var path = fault.Layer is { } layer ? $"{prefix}layers.{layer}" : $"{prefix}layers";
            faults.Add(Place(fields.At, path), path, new(fault.Reason, fault.Hint));
        }

        return null;
    }

    /// <summary>What stands at a path, or the last thing on the way to it that is there.</summary>
    private static Written Place(Written at, string path)
    {
        foreach (var step in path.Split('.'))
        {
            var next = at switch
            {
                Written.Map map => map.Get(step),
                Written.List list when int.TryParse(step, System.Globalization.CultureInfo.InvariantCulture, out var index) && index >= 0 && index < list.Items.Count => list.Items[index],
                _ => null,
            };
            if (next is null)
            {
                return at;
            }

            at = next;
        }

        return at;
    }
}
