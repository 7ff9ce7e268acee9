using System.Buffers;
using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace DetailGen.Dxf.Tags;

/// <summary>Writes tags as text into a pooled buffer of UTF-8. Nothing reaches a stream before the whole file stands.</summary>
internal sealed class TagWriter : ITagSink, IDisposable
{
    private const int CodeBytes = 8;
    private static readonly byte[][] CodeLines = [.. Enumerable.Range(0, GroupCodes.Highest + 1).Select(CodeLine)];
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private byte[] _buffer = ArrayPool<byte>.Shared.Rent(1 << 16);
    private int _length;

    public bool ValuesOnly => false;

    public ReadOnlySpan<byte> Written => _buffer.AsSpan(0, _length);

    public void Dispose()
    {
        ArrayPool<byte>.Shared.Return(_buffer);
        _buffer = [];
    }

    public void Marker(string name) => Text(100, name);

    public void Number(int code, double value, Grid grid)
    {
        Code(code, DxfNumber.MostBytes);
        _length += DxfNumber.Format(value, grid, _buffer.AsSpan(_length));
        EndLine();
    }

    public void Place(int xCode, int yCode, DxfPoint place)
    {
        Number(xCode, place.X, Grid.Length);
        Number(yCode, place.Y, Grid.Length);
    }

    public void Number(int code, double value) => Number(code, value, Grid.Length);

    public void Integer(int code, int value)
    {
        Code(code, 12);
        Utf8Formatter.TryFormat(value, _buffer.AsSpan(_length), out var written);
        _length += written;
        EndLine();
    }

    public void Handle(int code, int handle)
    {
        Code(code, 12);
        handle.TryFormat(_buffer.AsSpan(_length), out var written, "X", CultureInfo.InvariantCulture);
        _length += written;
        EndLine();
    }

    /// <exception cref="ArgumentException">Over 255 bytes, a control letter, or half a surrogate pair.</exception>
    public void Text(int code, string value) => Text(code, "", value);

    /// <summary>A text made of two, without joining them first.</summary>
    /// <exception cref="ArgumentException">Over 255 bytes, a control letter, or half a surrogate pair.</exception>
    public void Text(int code, ReadOnlySpan<char> prefix, ReadOnlySpan<char> value)
    {
        Code(code, DxfString.MostBytes + 2);
        var room = _buffer.AsSpan(_length, DxfString.MostBytes);
        if (!Strict.TryGetBytes(prefix, room, out var first) || !Strict.TryGetBytes(value, room[first..], out var second))
        {
            throw new ArgumentException($"The text is longer than {DxfString.MostBytes} bytes: {value}");
        }

        if (value.ContainsAnyInRange('\0', '\u001F') || value.ContainsAnyInRange('\u007F', '\u009F') || value.ContainsAny('\u2028', '\u2029'))
        {
            DxfString.RefuseControlLetters(value);
        }

        _length += first + second;
        EndLine();
    }

    /// <summary>The head of a record: kind, handle, owner.</summary>
    public void Begin(string kind, int handle, int owner)
    {
        Text(0, kind);
        Handle(5, handle);
        Handle(330, owner);
    }

    /// <summary>Where a text of known length goes, to be filled in when the rest is known.</summary>
    public int Reserve(int code, int bytes)
    {
        Code(code, bytes);
        var at = _length;
        _buffer.AsSpan(at, bytes).Fill((byte)'0');
        _length += bytes;
        EndLine();
        return at;
    }

    public void Fill(int at, ReadOnlySpan<char> text) => Encoding.UTF8.GetBytes(text, _buffer.AsSpan(at, text.Length));

    private void Code(int code, int valueBytes)
    {
        var needed = _length + CodeBytes + valueBytes + 2;
        if (needed > _buffer.Length)
        {
            Grow(needed);
        }

        var line = CodeLines[code];
        line.CopyTo(_buffer.AsSpan(_length));
        _length += line.Length;
    }

    private void EndLine()
    {
        _buffer[_length++] = (byte)'\r';
        _buffer[_length++] = (byte)'\n';
    }

    private void Grow(int needed)
    {
        var larger = ArrayPool<byte>.Shared.Rent(Math.Max(needed, _buffer.Length * 2));
        Written.CopyTo(larger);
        ArrayPool<byte>.Shared.Return(_buffer);
        _buffer = larger;
    }

    private static byte[] CodeLine(int code) => Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{code,3}\r\n"));
}
