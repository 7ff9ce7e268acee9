using System.Text.Json;
using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>The answer to "why": paragraphs in trade words, with their sources.</summary>
/// <param name="Kind">parameter, value, rule, part, equation, domain, stock, target, condition, material, check, detail or what-if.</param>
public sealed record ExplainReport(ToolReport Tool, string Detail, string Preset, string? Subject, string Kind, IReadOnlyList<ExplainedReport> Explained)
{
    /// <summary>What a change would bring; the conflict beside it is then that of the changed detail.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public WhatIfReport? WhatIf { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ConflictReport? Conflict { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ErrorReport>? Errors { get; init; }

    [JsonIgnore]
    public int Status { get; init; }
}

/// <summary>What a change would bring.</summary>
/// <param name="Set">What is tried.</param>
/// <param name="SolvedBefore">Whether there were sizes without it; if not, every value counts as new.</param>
/// <param name="SolvedAfter">Whether there are sizes with it.</param>
/// <param name="Values">Those that change, in order of key: sizes, choices, derived lengths and U-values.</param>
/// <param name="Rules">Those whose verdict changes, in the order of their packs; and checks on the section.</param>
public sealed record WhatIfReport(
    IReadOnlyList<string> Set, bool SolvedBefore, bool SolvedAfter, IReadOnlyList<ValueChangeReport> Values, IReadOnlyList<VerdictChangeReport> Rules);

/// <summary>A value that changes.</summary>
/// <param name="From">Null where the detail lacked it before.</param>
/// <param name="To">Null where the detail lacks it after.</param>
/// <param name="Kind">Why it is what it is after, as for parameters; equation for a U-value.</param>
/// <param name="Why">The same in one sentence.</param>
public sealed record ValueChangeReport(string Key, string? From, string? To, string? Kind, string? Why);

/// <summary>A verdict that changes.</summary>
/// <param name="From">Null where nothing was judged before.</param>
public sealed record VerdictChangeReport(string Id, string? From, string? To, string Text);

/// <summary>One thing explained.</summary>
public sealed record ExplainedReport(string Id, string Title, IReadOnlyList<string> Text, IReadOnlyList<string> Sources);

/// <summary>A list of what there is, under the plural name of its topic.</summary>
/// <param name="Columns">Keys of the rows that a terminal shows, in order.</param>
/// <param name="Rows">Values are text, numbers, or lists of text.</param>
public sealed record ListReport(string Topic, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyDictionary<string, object?>> Rows)
{
    public IReadOnlyList<ErrorReport>? Errors { get; init; }

    public int Status { get; init; }

    /// <summary>What is told of the list as a whole, key by key.</summary>
    public IReadOnlyList<(string Key, object? Value)> Further { get; init; } = [];

    /// <summary>As JSON: <c>{"rules": [...]}</c>.</summary>
    public string ToJson()
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, ReportJson.WriterOptions))
        {
            writer.WriteStartObject();
            writer.WriteStartArray(Topic);
            foreach (var row in Rows)
            {
                Write(writer, row);
            }

            writer.WriteEndArray();
            foreach (var (key, value) in Further)
            {
                writer.WritePropertyName(key);
                Write(writer, value);
            }

            writer.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }

    private static void Write(Utf8JsonWriter writer, object? value)
    {
        switch (value)
        {
            case null:
                writer.WriteNullValue();
                break;
            case string text:
                writer.WriteStringValue(text);
                break;
            case int number:
                writer.WriteNumberValue(number);
                break;
            case double number:
                writer.WriteNumberValue(number);
                break;
            case bool flag:
                writer.WriteBooleanValue(flag);
                break;
            case IReadOnlyDictionary<string, object?> map:
                writer.WriteStartObject();
                foreach (var (key, inner) in map)
                {
                    writer.WritePropertyName(key);
                    Write(writer, inner);
                }

                writer.WriteEndObject();
                break;
            case IEnumerable<IReadOnlyDictionary<string, object?>> maps:
                writer.WriteStartArray();
                foreach (var map in maps)
                {
                    Write(writer, map);
                }

                writer.WriteEndArray();
                break;
            case IEnumerable<string> texts:
                writer.WriteStartArray();
                foreach (var text in texts)
                {
                    writer.WriteStringValue(text);
                }

                writer.WriteEndArray();
                break;
            default:
                throw new ArgumentException($"A list holds no {value.GetType().Name}.", nameof(value));
        }
    }
}

/// <summary>A text that was made: a starter preset or a schema.</summary>
/// <param name="Text">Empty where there are errors.</param>
/// <param name="File">Where it was written; null where it goes to standard output.</param>
public sealed record TextReport(ToolReport Tool, string Text, string? File)
{
    internal static TextReport Refused(params IReadOnlyList<ErrorReport> errors) => new(DetailLibrary.Tool, "", null) { Errors = errors, Status = ExitStatus.WrongInput };

    /// <summary>The text is itself a JSON document, which needs no other around it.</summary>
    [JsonIgnore]
    public bool IsDocument { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ErrorReport>? Errors { get; init; }

    [JsonIgnore]
    public int Status { get; init; }
}
