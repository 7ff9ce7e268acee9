using System.Buffers.Binary;
using System.Globalization;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Reading;

/// <summary>Writes tags as they were read.</summary>
internal static class TagCopier
{
    private const int FullBuffer = 1 << 16;

    public static void Text(TagList tags, Stream output)
    {
        using var buffer = new MemoryStream(2 * FullBuffer);
        Span<byte> code = stackalloc byte[12];
        for (var tag = 0; tag < tags.Count; tag++)
        {
            _ = tags.Code(tag).TryFormat(code, out var written, default, CultureInfo.InvariantCulture);
            for (var blank = written; blank < 3; blank++)
            {
                buffer.WriteByte((byte)' ');
            }

            buffer.Write(code[..written]);
            buffer.Write("\r\n"u8);
            buffer.Write(tags.Value(tag));
            buffer.Write("\r\n"u8);
            Spill(buffer, output, FullBuffer);
        }

        Spill(buffer, output, 0);
    }

    /// <exception cref="DxfReadException">A value that its group code cannot hold.</exception>
    public static void Binary(TagList tags, Stream output)
    {
        using var buffer = new MemoryStream(2 * FullBuffer);
        buffer.Write(BinaryTags.Sentinel);
        Span<byte> room = stackalloc byte[8];
        for (var tag = 0; tag < tags.Count; tag++)
        {
            var code = tags.Code(tag);
            var value = tags.Value(tag);
            BinaryPrimitives.WriteInt16LittleEndian(room, (short)code);
            buffer.Write(room[..2]);
            switch (GroupCodes.KindOf(code))
            {
                case ValueKind.Number when Values.TryNumber(value, out var number):
                    BinaryPrimitives.WriteDoubleLittleEndian(room, number);
                    buffer.Write(room);
                    break;
                case ValueKind.Short when Values.TryInteger(value, out var integer) && integer is >= short.MinValue and <= short.MaxValue:
                    BinaryPrimitives.WriteInt16LittleEndian(room, (short)integer);
                    buffer.Write(room[..2]);
                    break;
                case ValueKind.Integer when Values.TryInteger(value, out var integer) && integer is >= int.MinValue and <= int.MaxValue:
                    BinaryPrimitives.WriteInt32LittleEndian(room, (int)integer);
                    buffer.Write(room[..4]);
                    break;
                case ValueKind.Long when Values.TryInteger(value, out var integer):
                    BinaryPrimitives.WriteInt64LittleEndian(room, integer);
                    buffer.Write(room);
                    break;
                case ValueKind.Flag when Values.TryInteger(value, out var integer) && integer is 0 or 1:
                    buffer.WriteByte((byte)integer);
                    break;
                case ValueKind.Bytes when value.Length <= 254 && value.Length % 2 == 0 && TryBytes(value, out var bytes):
                    buffer.WriteByte((byte)bytes.Length);
                    buffer.Write(bytes);
                    break;
                case ValueKind.Text or ValueKind.Handle when !value.Contains((byte)0):
                    buffer.Write(value);
                    buffer.WriteByte(0);
                    break;
                default:
                    throw new DxfReadException(tags.Line(tag), $"The value of group {code} does not fit into the binary form.");
            }

            Spill(buffer, output, FullBuffer);
        }

        Spill(buffer, output, 0);
    }

    private static bool TryBytes(ReadOnlySpan<byte> hex, out byte[] bytes)
    {
        bytes = new byte[hex.Length / 2];
        return Convert.FromHexString(hex, bytes, out _, out var written) is System.Buffers.OperationStatus.Done && written == bytes.Length;
    }

    private static void Spill(MemoryStream buffer, Stream output, int above)
    {
        if (buffer.Length > above)
        {
            output.Write(buffer.GetBuffer(), 0, (int)buffer.Length);
            buffer.SetLength(0);
        }
    }
}
