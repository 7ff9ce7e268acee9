using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>The letters that a scene needs of each weight, in order.</summary>
internal sealed record UsedLetters(IReadOnlyCollection<char> Regular, IReadOnlyCollection<char> Bold)
{
    public static UsedLetters Of(Scene scene)
    {
        var (regular, bold) = (new SortedSet<char>(), new SortedSet<char>());
        foreach (var view in scene.Views)
        {
            Add(view.Items, regular, bold);
        }

        foreach (var page in scene.Pages)
        {
            Add(page.Items, regular, bold);
        }

        return new(regular, bold);
    }

    private static void Add(IReadOnlyList<Item> items, SortedSet<char> regular, SortedSet<char> bold)
    {
        foreach (var item in items)
        {
            switch (item)
            {
                case Text text:
                    (text.Bold ? bold : regular).UnionWith(text.Words);
                    break;
                case Dimension dimension:
                    regular.UnionWith(dimension.Figure);
                    break;
                case Paragraph paragraph:
                    foreach (var line in paragraph.Lines)
                    {
                        regular.UnionWith(line);
                    }

                    break;
                case Group group:
                    Add(group.Items, regular, bold);
                    break;
                case Form form:
                    Add(form.Items, regular, bold);
                    Add([.. form.Values.Select(value => value.Text)], regular, bold);
                    break;
            }
        }
    }
}
