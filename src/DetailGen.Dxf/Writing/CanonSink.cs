using System.Buffers.Text;
using System.Text;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Gathers the values of one entity as a line of text, for the digest: no markers, handles, owners or constants, defaults filled in.</summary>
internal sealed class CanonSink : ITagSink
{
    private const byte Separator = (byte)'|';

    private byte[] _line = new byte[1024];
    private int _length;

    public bool ValuesOnly => true;

    /// <summary>What the entity is moved back by before its values are taken.</summary>
    public DxfPoint Moved { get; set; }

    public ReadOnlySpan<byte> Line => _line.AsSpan(0, _length);

    public void Clear() => _length = 0;

    public void Marker(string name)
    {
        // Markers say how the file is laid out, not what is drawn.
    }

    public void Number(int code, double value, Grid grid)
    {
        Room(DxfNumber.MostBytes + 1);
        _length += DxfNumber.Format(value, grid, _line.AsSpan(_length));
        _line[_length++] = Separator;
    }

    public void Place(int xCode, int yCode, DxfPoint place)
    {
        Number(xCode, place.X - Moved.X, Grid.Length);
        Number(yCode, place.Y - Moved.Y, Grid.Length);
    }

    public void Integer(int code, int value)
    {
        Room(13);
        Utf8Formatter.TryFormat(value, _line.AsSpan(_length), out var written);
        _length += written;
        _line[_length++] = Separator;
    }

    public void Text(int code, string value) => Text(value);

    /// <summary>A name: names are compared without case.</summary>
    public void Name(string name)
    {
        Span<char> lower = stackalloc char[name.Length];
        name.AsSpan().ToLowerInvariant(lower);
        Text(lower);
    }

    private void Text(ReadOnlySpan<char> value)
    {
        Room(Encoding.UTF8.GetMaxByteCount(value.Length) + 1);
        _length += Encoding.UTF8.GetBytes(value, _line.AsSpan(_length));
        _line[_length++] = Separator;
    }

    private void Room(int bytes)
    {
        if (_length + bytes > _line.Length)
        {
            Array.Resize(ref _line, Math.Max(_line.Length * 2, _length + bytes));
        }
    }
}
