using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>The short forms that the key spells out: exactly those that somebody reads on the sheet.</summary>
internal static class ShortForms
{
    internal static IReadOnlyList<string> Used(SheetText text, AnnotationLayout layout)
    {
        var words = layout.Items.SelectMany(Said)
            .Concat(layout.Keyed.Select(note => note.Words))
            .Concat(text.Schedule.SelectMany(stack => stack.Rows).SelectMany(row => (string[])[row.Element, row.Material, row.Function, row.Remark]))
            .Concat([text.Title.Title, text.Title.Subtitle, .. text.Notes])
            .SelectMany(Words)
            .ToHashSet(StringComparer.Ordinal);
        return [.. text.ShortForms.Where(form => words.Contains(form.Split(':')[0]))];
    }

    private static IEnumerable<string> Said(Item item) => item switch
    {
        Text text => [text.Words],
        Paragraph paragraph => paragraph.Lines,
        Group group => group.Items.SelectMany(Said),
        _ => [],
    };

    private static string[] Words(string line) => line.Split([' ', ',', ';', '(', ')', '/'], StringSplitOptions.RemoveEmptyEntries);
}
