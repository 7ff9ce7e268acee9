using DetailGen.Details.Presets;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>JSON schemas by kind of file.</summary>
internal static class SchemaText
{
    private static readonly SortedDictionary<string, Func<Office, string>> All = new(StringComparer.Ordinal)
    {
        ["base"] = office => Schemas.Base(office.Context.Components),
        ["climates"] = _ => Schemas.Climates,
        ["component"] = _ => Schemas.Component,
        ["formats"] = _ => Schemas.Formats,
        ["inks"] = _ => Schemas.Inks,
        ["layers"] = _ => Schemas.Layers,
        ["logo"] = _ => Schemas.Logo,
        ["materials"] = _ => Schemas.Materials,
        ["preset"] = office => Schemas.Preset(office.Context.Components),
        ["rules"] = _ => Schemas.Rules,
        ["stock"] = _ => Schemas.Stock,
        ["text-sizes"] = _ => Schemas.TextSizes,
        ["typeface"] = _ => Schemas.Typeface,
    };

    internal static IReadOnlyList<string> Kinds { get; } = [.. All.Keys];

    internal static TextReport Of(string kind, Office office) =>
        All.TryGetValue(kind, out var schema)
            ? new(DetailLibrary.Tool, schema(office).TrimEnd() + "\n", null) { IsDocument = true }
            : TextReport.Refused(ErrorReport.Of("unknown-kind", "", Messages.NoSuch("kind", kind), Messages.Meant(kind, Kinds), value: kind));
}
