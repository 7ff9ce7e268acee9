using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using DetailGen.Drawing.Emitters.Plain;

namespace DetailGen.Drawing.Tests.Emitters;

/// <summary>A small reader of the PDFs we write: objects by the cross-reference table, content streams operator by operator.</summary>
internal sealed partial class PdfFile
{
    private readonly Dictionary<int, (string Head, byte[] Stream)> _objects = [];
    private readonly List<int> _pages;

    public PdfFile(byte[] bytes)
    {
        Plain = Encoding.Latin1.GetString(bytes);
        var table = int.Parse(StartXref().Match(Plain).Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.Equal("xref", Plain.Substring(table, 4));
        foreach (var (row, number) in XrefRow().Matches(Plain[table..]).Select((row, i) => (row, i)).Skip(1))
        {
            var at = int.Parse(row.Groups[1].Value, CultureInfo.InvariantCulture);
            var head = FormattableString.Invariant($"{number} 0 obj\n");
            Assert.Equal(head, Plain.Substring(at, head.Length));
            _objects[number] = Object(bytes, at + head.Length);
        }

        _pages = [.. Reference().Matches(Kids().Match(_objects.Values.Single(o => o.Head.Contains("/Type /Pages", StringComparison.Ordinal)).Head).Value).Select(Number)];
    }

    /// <summary>The whole file, a letter for each byte.</summary>
    public string Plain { get; }

    public IReadOnlyList<byte[]> FontFiles => [.. FontFile().Matches(string.Concat(_objects.Values.Select(o => o.Head))).Select(match => _objects[Number(match)].Stream)];

    /// <summary>In mm.</summary>
    public IEnumerable<(double Width, double Height)> PageSizes => _pages.Select(page => MediaBox().Match(_objects[page].Head)).Select(box => (Millimetres(box.Groups[1].Value), Millimetres(box.Groups[2].Value)));

    /// <summary>Straight pieces of a page in mm from its lower left corner.</summary>
    public IReadOnlyList<Segment> Lines(int page)
    {
        var lines = new List<Segment>();
        var (matrix, saved, at) = ((A: 1.0, B: 0.0, C: 0.0, D: 1.0, E: 0.0, F: 0.0), new Stack<(double, double, double, double, double, double)>(), (X: 0.0, Y: 0.0));
        Walk(page, (name, numbers, _) =>
        {
            switch (name)
            {
                case "q":
                    saved.Push(matrix);
                    break;
                case "Q":
                    matrix = saved.Pop();
                    break;
                case "cm":
                    var (a, b, c, d, e, f) = (numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5]);
                    matrix = (a * matrix.A + b * matrix.C, a * matrix.B + b * matrix.D, c * matrix.A + d * matrix.C, c * matrix.B + d * matrix.D,
                        e * matrix.A + f * matrix.C + matrix.E, e * matrix.B + f * matrix.D + matrix.F);
                    break;
                case "m":
                    at = OnPaper(numbers);
                    break;
                case "l":
                    var to = OnPaper(numbers);
                    lines.Add(new(at.X, at.Y, to.X, to.Y));
                    at = to;
                    break;
            }
        });
        return lines;

        (double X, double Y) OnPaper(List<double> point) => (
            25.4 / 72 * (point[0] * matrix.A + point[1] * matrix.C + matrix.E), 25.4 / 72 * (point[0] * matrix.B + point[1] * matrix.D + matrix.F));
    }

    /// <summary>What each text object of a page says, by the tables that its font carries for that.</summary>
    public IReadOnlyList<string> Texts(int page)
    {
        var (texts, words, letters) = (new List<string>(), new StringBuilder(), new Dictionary<int, int>());
        Walk(page, (name, _, operand) =>
        {
            switch (name)
            {
                case "Tf":
                    letters = Letters(page, operand);
                    break;
                case "Tj":
                    for (var i = 1; i + 4 < operand.Length; i += 4)
                    {
                        words.Append((char)letters[Hex(operand.Substring(i, 4))]);
                    }

                    break;
                case "ET":
                    texts.Add(words.ToString());
                    words.Clear();
                    break;
            }
        });
        return texts;
    }

    private void Walk(int page, Action<string, List<double>, string> see)
    {
        var content = Number(Contents().Match(_objects[_pages[page]].Head));
        var (numbers, operand) = (new List<double>(), "");
        foreach (var word in Encoding.Latin1.GetString(_objects[content].Stream).Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            {
                numbers.Add(number);
            }
            else if (word[0] is '/' or '<')
            {
                operand = word;
            }
            else
            {
                see(word, numbers, operand);
                numbers.Clear();
            }
        }
    }

    private Dictionary<int, int> Letters(int page, string fontName)
    {
        var font = Number(Regex.Match(_objects[_pages[page]].Head, fontName + @" (\d+) 0 R"));
        var map = Encoding.Latin1.GetString(_objects[Number(ToUnicode().Match(_objects[font].Head))].Stream);
        var letters = new Dictionary<int, int>();
        foreach (Match row in Range().Matches(map))
        {
            for (var glyph = Hex(row.Groups[1].Value); glyph <= Hex(row.Groups[2].Value); glyph++)
            {
                letters[glyph] = Hex(row.Groups[3].Value) + glyph - Hex(row.Groups[1].Value);
            }
        }

        foreach (Match row in Single().Matches(Range().Replace(map, "")))
        {
            letters[Hex(row.Groups[1].Value)] = Hex(row.Groups[2].Value);
        }

        return letters;
    }

    private (string, byte[]) Object(byte[] bytes, int at)
    {
        var end = Plain.IndexOf("endobj", at, StringComparison.Ordinal);
        var stream = Plain.IndexOf("stream\n", at, StringComparison.Ordinal);
        if (stream < 0 || stream > end)
        {
            return (Plain[at..end], []);
        }

        var head = Plain[at..stream];
        using var packed = new MemoryStream(bytes, stream + 7, int.Parse(Length().Match(head).Groups[1].Value, CultureInfo.InvariantCulture));
        using var unpacked = new MemoryStream();
        using (var inflate = new ZLibStream(packed, CompressionMode.Decompress))
        {
            inflate.CopyTo(unpacked);
        }

        return (head, unpacked.ToArray());
    }

    private static int Hex(string text) => int.Parse(text, NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    private static int Number(Match match) => int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);

    private static double Millimetres(string points) => double.Parse(points, CultureInfo.InvariantCulture) * 25.4 / 72;

    [GeneratedRegex(@"startxref\n(\d+)\n%%EOF\n$")]
    private static partial Regex StartXref();

    [GeneratedRegex(@"(\d{10}) \d{5} [fn] \n")]
    private static partial Regex XrefRow();

    [GeneratedRegex(@"/Kids \[[^\]]*\]")]
    private static partial Regex Kids();

    [GeneratedRegex(@"(\d+) 0 R")]
    private static partial Regex Reference();

    [GeneratedRegex(@"/FontFile2 (\d+) 0 R")]
    private static partial Regex FontFile();

    [GeneratedRegex(@"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]")]
    private static partial Regex MediaBox();

    [GeneratedRegex(@"/Contents (\d+) 0 R")]
    private static partial Regex Contents();

    [GeneratedRegex(@"/ToUnicode (\d+) 0 R")]
    private static partial Regex ToUnicode();

    [GeneratedRegex(@"/Length (\d+)")]
    private static partial Regex Length();

    [GeneratedRegex(@"<([0-9A-F]{4})> <([0-9A-F]{4})> <([0-9A-F]{4})>\n")]
    private static partial Regex Range();

    [GeneratedRegex(@"<([0-9A-F]{4})> <([0-9A-F]{4})>\n")]
    private static partial Regex Single();
}
