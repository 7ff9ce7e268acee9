using System.Buffers.Binary;

namespace DetailGen.Drawing.Emitters.Png;

/// <summary>Adds the chunk pHYs, which the encoder leaves out: without it a picture prints at any size. Layout and checksum: PNG specification, second edition (ISO/IEC 15948:2004), from memory.</summary>
internal static class PngResolution
{
    // Signature of 8 bytes, then IHDR: length 4, name 4, data 13, checksum 4.
    private const int HeaderEnd = 8 + 25;

    /// <param name="dotsPerMetre">Rounded to whole ones, as the chunk holds them.</param>
    public static void Write(ReadOnlySpan<byte> png, double dotsPerMetre, Stream output)
    {
        Span<byte> chunk = stackalloc byte[4 + 4 + 9 + 4];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, 9);
        "pHYs"u8.CopyTo(chunk[4..]);
        var dots = (uint)Math.Round(dotsPerMetre);
        BinaryPrimitives.WriteUInt32BigEndian(chunk[8..], dots);
        BinaryPrimitives.WriteUInt32BigEndian(chunk[12..], dots);
        chunk[16] = 1; // per metre
        BinaryPrimitives.WriteUInt32BigEndian(chunk[17..], Checksum(chunk[4..17]));

        output.Write(png[..HeaderEnd]);
        output.Write(chunk);
        output.Write(png[HeaderEnd..]);
    }

    private static uint Checksum(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var value in bytes)
        {
            sum ^= value;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) == 0 ? sum >> 1 : (sum >> 1) ^ 0xEDB88320;
            }
        }

        return ~sum;
    }
}
