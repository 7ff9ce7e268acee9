using System.Text;

namespace DetailGen.Drawing.Emitters.Svg;

/// <summary>UTF-8 bytes with numbers in thousandths of a millimetre; culture never comes near.</summary>
internal sealed class SvgWriter
{
    private byte[] _bytes = new byte[1 << 16];
    private int _count;

    public ReadOnlySpan<byte> Written => _bytes.AsSpan(0, _count);

    public SvgWriter Raw(ReadOnlySpan<byte> ascii)
    {
        Room(ascii.Length);
        ascii.CopyTo(_bytes.AsSpan(_count));
        _count += ascii.Length;
        return this;
    }

    /// <summary>Rounded to 0.001, shortest form, never <c>-0</c> and never an exponent.</summary>
    /// <exception cref="ArgumentException">Not finite, or beyond a thousand kilometres.</exception>
    public SvgWriter Number(double value)
    {
        if (!(Math.Abs(value) < 1e9))
        {
            throw new ArgumentException($"{value} is no place on paper.");
        }

        var thousandths = (long)Math.Round(value * 1000, MidpointRounding.AwayFromZero);
        Room(24);
        if (thousandths < 0)
        {
            _bytes[_count++] = (byte)'-';
            thousandths = -thousandths;
        }

        var (whole, rest) = Math.DivRem(thousandths, 1000);
        whole.TryFormat(_bytes.AsSpan(_count), out var digits, default, null);
        _count += digits;
        if (rest != 0)
        {
            _bytes[_count++] = (byte)'.';
            for (var unit = 100; rest != 0; unit /= 10)
            {
                _bytes[_count++] = (byte)('0' + rest / unit);
                rest %= unit;
            }
        }

        return this;
    }

    public SvgWriter Point(double x, double y) => Number(x).Raw(" "u8).Number(y);

    /// <summary>Letters that mean something to XML are written as references; those that XML forbids become the replacement character.</summary>
    public SvgWriter Escaped(ReadOnlySpan<char> text)
    {
        var plain = 0;
        for (var i = 0; i < text.Length; i++)
        {
            var instead = text[i] switch
            {
                '&' => "&amp;"u8,
                '<' => "&lt;"u8,
                '>' => "&gt;"u8,
                '"' => "&quot;"u8,
                '\'' => "&#39;"u8,
                < ' ' or '\uFFFE' or '\uFFFF' => "\uFFFD"u8,
                _ => default,
            };
            if (!instead.IsEmpty)
            {
                Utf8(text[plain..i]);
                Raw(instead);
                plain = i + 1;
            }
        }

        return Utf8(text[plain..]);
    }

    private SvgWriter Utf8(ReadOnlySpan<char> text)
    {
        Room(3 * text.Length);
        _count += Encoding.UTF8.GetBytes(text, _bytes.AsSpan(_count));
        return this;
    }

    private void Room(int more)
    {
        if (_count + more > _bytes.Length)
        {
            Array.Resize(ref _bytes, Math.Max(2 * _bytes.Length, _count + more));
        }
    }
}
