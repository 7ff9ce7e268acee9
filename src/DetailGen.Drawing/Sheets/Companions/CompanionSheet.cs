using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>A sheet beside the detail itself, without its frame.</summary>
/// <param name="Scale">s of 1:s, of all its views.</param>
/// <param name="Views">Further views of the scene.</param>
/// <param name="Placements">Where they stand on the sheet.</param>
internal sealed record CompanionSheet(double Scale, IReadOnlyList<View> Views, IReadOnlyList<Placement> Placements, IReadOnlyList<Item> Items);

/// <summary>What companion sheets are drawn from.</summary>
/// <param name="Drawn">The section as it stands on the first sheet.</param>
/// <param name="Origin">Where its origin lies there.</param>
/// <param name="Window">Where it is broken off, model mm.</param>
/// <param name="Number">Of the view on the sheet, for its ring.</param>
internal sealed record CompanionBasis(Section Section, DrawnView Drawn, Bounds Window, PaperPoint Origin, SheetFormat Format, string ViewTitle, int Number)
{
    /// <summary>Null where no thermal sheet is asked for.</summary>
    internal ThermalText? Thermal { get; init; }

    /// <summary>Length that the signs of control lines need in a legend, mm.</summary>
    internal double ControlSign { get; init; }

    internal TextSizes Sizes => Format.TextSizes;

    /// <summary>Where drawings may stand: the drawing space above the title block, clear of the centring marks.</summary>
    internal PaperBox Room => Format.Space.Grow(-7) with { Bottom = Format.TitleTop + 4 };

    /// <summary>A stroke that stands back: thin, whatever it was.</summary>
    internal static Stroke Thin(Stroke stroke) => stroke.Row.StartsWith("cut.", StringComparison.Ordinal) ? stroke with { Row = "beyond" + stroke.Row[stroke.Row.LastIndexOf('.')..] } : stroke;

    /// <summary>The title of a view that stands where the section does on the first sheet.</summary>
    internal IEnumerable<Item> Title(string what)
    {
        var box = ViewRoom.Of(Format, Drawn.Mirror).Title(what, Drawn.Scale, Drawn.Mirror);
        return Title(what, Drawn.Scale, new(box.Left, box.Bottom));
    }

    /// <summary>Ring, title, scale and scale bar under a view.</summary>
    internal IEnumerable<Item> Title(string what, double scale, PaperPoint at) =>
        Sheets.ViewTitle.Of(Sizes, Number.ToString(System.Globalization.CultureInfo.InvariantCulture), what, scale, at, Format.Space.Right - at.X);
}

/// <summary>Draws companion sheets.</summary>
internal static class CompanionSheets
{
    /// <returns>One sheet; more where its tables need them.</returns>
    internal static IReadOnlyList<CompanionSheet> Of(Companion companion, CompanionBasis basis) => companion switch
    {
        Companion.Exploded => [ExplodedLayers.Of(basis)],
        Companion.ControlLines => [ControlLines.Of(basis)],
        Companion.Sequence => [BuildSequence.Of(basis)],
        Companion.Blank => [BlankSection.Of(basis)],
        Companion.Thermal => ThermalSheet.Of(basis),
        _ => throw new ArgumentOutOfRangeException(nameof(companion), companion, "There is no such sheet."),
    };
}
