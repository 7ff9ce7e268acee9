using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Library.Wording;

/// <summary>Letters that stand on a sheet and that its font has no picture of: names and titles are the author's, and may be in any script.</summary>
internal static class UnknownLetters
{
    /// <summary>A warning that names them; none where all can be shown.</summary>
    internal static IEnumerable<string> Warning(Scene scene)
    {
        List<string> letters =
        [
            .. scene.Views.SelectMany(view => view.Items).Concat(scene.Pages.SelectMany(page => page.Items)).SelectMany(Words)
                .SelectMany(words => words.EnumerateRunes()).Select(letter => letter.ToString()).Distinct(StringComparer.Ordinal).Where(letter => !Letters.CanShow(letter)).Order(StringComparer.Ordinal),
        ];
        return letters.Count > 0 ? [Messages.UnknownLetters(letters)] : [];
    }

    private static IEnumerable<string> Words(Item item) => item switch
    {
        Text text => [text.Words],
        Paragraph paragraph => paragraph.Lines,
        Dimension dimension => [dimension.Figure],
        Group group => group.Items.SelectMany(Words),
        Form form => form.Items.SelectMany(Words).Concat(form.Values.Select(value => value.Text.Words)),
        _ => [],
    };
}
