using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>Laid sheets with what is on them and where they are white, each read once, when it is first asked for.</summary>
internal sealed class Papers(Scene scene, SheetFormat format)
{
    private readonly Dictionary<int, PageInk> _inks = [];
    private readonly Dictionary<int, WhitePaper> _whites = [];

    internal Scene Scene { get; private set; } = scene;

    /// <param name="page">From 0.</param>
    internal PageInk Ink(int page)
    {
        if (!_inks.TryGetValue(page, out var ink))
        {
            _inks.Add(page, ink = PageInk.Of(Scene, Scene.Pages[page]));
        }

        return ink;
    }

    internal WhitePaper White(int page)
    {
        if (!_whites.TryGetValue(page, out var white))
        {
            _whites.Add(page, white = new(Ink(page), format, Insets.Zones(format, page)));
        }

        return white;
    }

    /// <summary>The same sheets with more on them.</summary>
    /// <param name="with">As they are then.</param>
    /// <param name="more">What came to them, by pages that have been looked at for white.</param>
    internal void Add(Scene with, params ReadOnlySpan<(int Page, Placement? Placement, IReadOnlyList<Item> Items)> more)
    {
        Scene = with;
        foreach (var (page, placement, items) in more)
        {
            var ink = PageInk.Of(with, placement, items);
            Ink(page).Add(ink);
            White(page).Add(ink);
        }
    }

    /// <summary>Other sheets of that format.</summary>
    internal Papers Other(Scene other) => new(other, format);
}
