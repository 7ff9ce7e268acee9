using System.Globalization;
using DetailGen.Details.Presets;
using DetailGen.Details.Sheets;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;

namespace DetailGen.Library.Working;

/// <summary>The sheet data of a practice in the drawing's own terms.</summary>
internal static class SheetSetup
{
    // On A4, and letter paper like it, only two sides are lettered; the sources disagree which (secondary text: top and left; from memory: top and right).
    private static readonly string[] TwoSides = ["top", "right"];
    private static readonly string[] FourSides = ["top", "right", "bottom", "left"];

    /// <param name="reducedPrint">Whether the sheets are to be read when they are printed smaller.</param>
    internal static IReadOnlyList<SheetFormat> Formats(SheetData data, Typeface typeface, bool reducedPrint)
    {
        var sizes = data.TextSizes.Single(row => row.Use == (reducedPrint ? SheetShape.ReducedPrint : SheetShape.FullSize));
        var logo = data.Logo.Count > 0 ? new Logo([.. data.Logo.Select(Mark)]) : null;
        return [.. data.Formats.Select(row => Format(row) with { TextSizes = new(sizes.Notes, sizes.Titles, sizes.Numbers, sizes.FieldLabels) { Typeface = typeface }, Logo = logo })];
    }

    private static LogoMark Mark(LogoRow row) => new(
        row.Shape switch { "area" => LogoMarkKind.Area, "outline" => LogoMarkKind.Outline, _ => LogoMarkKind.Line }, [.. row.Points.Select(point => new PaperPoint(point.X, point.Y))]);

    internal static LayerMap Layers(SheetData data)
    {
        var inks = data.Inks.ToDictionary(ink => ink.Ink, ink => Colour(ink.Colour), StringComparer.Ordinal);
        return new([.. data.Layers.Select(layer => new LayerLook(layer.Row, layer.Name, layer.Width, layer.WidthOnA1, layer.LineType, inks[layer.Ink], layer.Plotted))]);
    }

    /// <summary>What the preset asks of its sheet.</summary>
    internal static SheetRequest Asked(Preset preset, bool viewOnly) => new(preset.Sheet.Paper, preset.Sheet.Scale, preset.Mirror, viewOnly)
    {
        ForCopies = Has(preset, "line-group", "copy"),
        TrimMarks = Has(preset, "trim-marks", "true"),
        Insets = !Has(preset, "inset", "none"),
        ControlLines = !Has(preset, "control-lines", "none"),
        Companions = [.. preset.Sheet.Companions.Select(word => word switch
        {
            "exploded" => Companion.Exploded,
            "control-lines" => Companion.ControlLines,
            "sequence" => Companion.Sequence,
            "thermal" => Companion.Thermal,
            _ => Companion.Blank,
        })],
    };

    internal static bool Has(Preset preset, string key, string value) => preset.Sheet.Options.Any(option => option.Key == key && option.Value == value);

    private static SheetFormat Format(FormatRow row)
    {
        PaperBox space = new(row.BorderLeft, row.BorderOthers, row.Width - row.BorderOthers, row.Height - row.BorderOthers);
        var wide = row.Width > row.Height;
        return new(
            row.Paper, row.Width, row.Height, space, wide ? row.GridLong : row.GridShort, wide ? row.GridShort : row.GridLong, row.Paper is "A4" or "ANSI-A" ? TwoSides : FourSides,
            row.Zones.ToDictionary(zone => zone.Name, zone => new PaperBox(zone.Left, zone.Bottom, zone.Right, zone.Top).Shift(new(space.Left, space.Bottom)), StringComparer.Ordinal))
        {
            Untrimmed = (row.UntrimmedWidth, row.UntrimmedHeight),
        };
    }

    private static Ink Colour(string hex)
    {
        byte Pair(int start) => byte.Parse(hex.AsSpan(start, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return new(Pair(1), Pair(3), Pair(5));
    }
}
