namespace DetailGen.Drawing.Lettering;

/// <summary>Words that are not torn any further, each measured once: for lines of whatever width.</summary>
internal sealed class MeasuredWords
{
    // A last line of one shorter word looks like a slip of the pen.
    private const int Widow = 5;

    private readonly string[] _words;
    private readonly double[] _widths;
    private readonly double _space;
    private readonly double _whole;

    /// <param name="height">Height of capitals, mm.</param>
    internal MeasuredWords(Typeface typeface, string text, double height)
        : this(typeface, [.. Wrapping.Words(text)], height, bold: false)
    {
    }

    internal MeasuredWords(Typeface typeface, string[] words, double height, bool bold)
    {
        _words = words;
        _widths = Array.ConvertAll(_words, word => typeface.Width(word, height, bold));
        _space = typeface.Width(" ", height, bold);
        Longest = _widths.DefaultIfEmpty(0).Max();
        _whole = _widths.Sum() + (_words.Length - 1) * _space;
    }

    /// <summary>Width of its longest word, mm; a column must be as wide.</summary>
    internal double Longest { get; }

    /// <summary>Where the lines begin, as indices of words; a line of a single word may be wider than asked.</summary>
    /// <param name="first">Width of the first line, mm.</param>
    /// <param name="width">Of the others.</param>
    internal List<int> Starts(double first, double width)
    {
        var starts = new List<int>();
        var used = 0.0;
        for (var i = 0; i < _words.Length; i++)
        {
            if (i == 0 || used + _space + _widths[i] > (starts.Count == 1 ? first : width) + 1e-9)
            {
                starts.Add(i);
                used = _widths[i];
            }
            else
            {
                used += _space + _widths[i];
            }
        }

        var last = _words.Length - 1;
        if (IsWidow(starts) && starts[^1] - starts[^2] >= 2 && _widths[last - 1] + _space + _widths[last] <= width + 1e-9)
        {
            starts[^1]--;
        }

        return starts;
    }

    /// <summary>How many lines of that width it takes.</summary>
    internal int Count(double width) => _whole <= width ? Math.Min(1, _words.Length) : Starts(width, width).Count;

    /// <summary>Whether the last of several lines is one short word.</summary>
    internal bool IsWidow(List<int> starts) => starts.Count > 1 && starts[^1] == _words.Length - 1 && _words[^1].Length < Widow;

    internal string[] Lines(List<int> starts) =>
        [.. starts.Select((start, line) => string.Join(' ', _words[start..(line + 1 < starts.Count ? starts[line + 1] : _words.Length)]))];
}
