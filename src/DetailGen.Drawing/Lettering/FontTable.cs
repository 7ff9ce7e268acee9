using System.Buffers.Binary;

namespace DetailGen.Drawing.Lettering;

/// <summary>One table of a font file. What lies outside it reads as 0, so that no damage to a file can stop the reader.</summary>
internal readonly record struct FontTable(ReadOnlyMemory<byte> Bytes)
{
    public int Length => Bytes.Length;

    public int UInt16(int at) => Holds(at, 2) ? BinaryPrimitives.ReadUInt16BigEndian(Bytes.Span[at..]) : 0;

    public int Int16(int at) => unchecked((short)UInt16(at));

    public uint UInt32(int at) => Holds(at, 4) ? BinaryPrimitives.ReadUInt32BigEndian(Bytes.Span[at..]) : 0;

    /// <summary>A piece of it; null where it ends before.</summary>
    public FontTable? Piece(long at, long length) => at >= 0 && length >= 0 && at + length <= Length ? new(Bytes.Slice((int)at, (int)length)) : null;

    private bool Holds(int at, int length) => at >= 0 && at <= Length - length;
}
