using System.Globalization;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Auditing;

/// <summary>The sheet with every fault ringed and numbered, the list beside it.</summary>
public static class AuditPicture
{
    private const string Row = "audit";
    private const double Around = 9;
    private static readonly double Text = Lettering.TextSizes.Usual.Notes;
    private const double Pitch = 4.25;
    private const double Column = 110;
    private const double Inset = 6;

    /// <param name="faults">Numbered from 1 in this order, over all sheets.</param>
    public static Scene Of(Scene scene, IReadOnlyList<AuditFault> faults) => scene with
    {
        Layers = [.. scene.InBlack().Layers, new(Row, "A-------K9", 0.5, "continuous", new(220, 0, 40))],
        Pages = [.. scene.Pages.Select(page => Marked(page, scene.Typeface, [.. faults.Index().Where(one => one.Item.Sheet == page.Number).Select(one => (one.Index + 1, one.Item))]))],
    };

    private static Page Marked(Page page, Typeface typeface, IReadOnlyList<(int Number, AuditFault Fault)> faults)
    {
        var items = page.Items.ToList();
        foreach (var (number, fault) in faults)
        {
            items.Add(new Ring(Row, fault.At, Around));
            items.Add(new Text(Row, number.ToString(CultureInfo.InvariantCulture), fault.At + new PaperPoint(0.36 * Around, 0.36 * Around), Text, Bold: true));
        }

        var (left, y) = (page.Width + Inset, page.Height - 2 * Inset);
        var heading = faults.Count == 0 ? "Layout audit: no fault found" : string.Create(CultureInfo.InvariantCulture, $"Layout audit: {faults.Count} {(faults.Count == 1 ? "fault" : "faults")}");
        items.Add(new Text(Row, heading, new(left, y), Lettering.TextSizes.Usual.Titles, Bold: true));
        y -= 2 * Pitch;
        foreach (var (number, fault) in faults)
        {
            var words = string.Create(CultureInfo.InvariantCulture, $"{number} {fault.Kind}, {fault.Amount:0.00} mm, at {fault.At.X:0.0}, {fault.At.Y:0.0}: {fault.First} | {fault.Second}");
            var lines = typeface.Wrap(words, Text, Column);
            if (y - lines.Count * Pitch < Inset)
            {
                (left, y) = (left + Column + Inset, page.Height - 2 * Inset - 2 * Pitch);
            }

            items.Add(new Paragraph(Row, lines, new(left, y), Text, Pitch));
            y -= (lines.Count + 0.4) * Pitch;
        }

        return page with { Width = left + Column + Inset, Items = items };
    }
}
