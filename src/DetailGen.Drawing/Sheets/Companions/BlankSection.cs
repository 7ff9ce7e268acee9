namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>The section without a word, where it stands on the first sheet: to be labelled by who learns it.</summary>
internal static class BlankSection
{
    private const string Id = "blank";

    internal static CompanionSheet Of(CompanionBasis basis)
    {
        var drawn = basis.Drawn;
        return new(
            drawn.Scale,
            [new(Id, drawn.Scale, drawn.Items, drawn.Bounds)],
            [new(Id, basis.Origin, basis.Format.Zones["view"])],
            [.. basis.Title(basis.ViewTitle + ", to be labelled")]);
    }
}
