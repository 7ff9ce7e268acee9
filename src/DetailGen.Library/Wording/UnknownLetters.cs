using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Library.Wording;

/// <summary>Letters that stand on a sheet and that its font has no picture of: names and titles are the author's, and may be in any script.</summary>
internal static class UnknownLetters
{
    /// <summary>A warning that names them; none where all can be shown.</summary>
    internal static IEnumerable<string> Warning(Scene scene)
    {
        var typeface = scene.Typeface;
        List<string> letters =
        [
            .. scene.Views.SelectMany(view => view.Items).Concat(scene.Pages.SelectMany(page => page.Items)).SelectMany(Words)
                .SelectMany(one => one.Words.EnumerateRunes().Select(letter => (Letter: letter.ToString(), one.Bold))).Distinct().Where(one => !typeface.CanShow(one.Letter, one.Bold))
                .Select(one => one.Letter).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
        ];
        return letters.Count > 0 ? [Messages.UnknownLetters(letters, shipped: ReferenceEquals(typeface, Typeface.Shipped))] : [];
    }

    private static IEnumerable<(string Words, bool Bold)> Words(Item item) => item switch
    {
        Text text => [(text.Words, text.Bold)],
        Paragraph paragraph => paragraph.Lines.Select(line => (line, false)),
        Dimension dimension => [(dimension.Figure, false)],
        Group group => group.Items.SelectMany(Words),
        Form form => form.Items.Concat(form.Values.Select(value => value.Text)).SelectMany(Words),
        _ => [],
    };
}
