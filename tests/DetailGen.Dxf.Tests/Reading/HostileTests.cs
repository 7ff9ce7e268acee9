using System.Text;
using CsCheck;
using DetailGen.Dxf.Reading;
using DetailGen.Testing;

namespace DetailGen.Dxf.Tests.Reading;

/// <summary>The reader stays upright whatever it is given: an answer, or a message with a place.</summary>
public class HostileTests
{
    private static readonly byte[] Sample = SampleDrawing.Bytes(SampleDrawing.Document());
    private static readonly byte[] Binary = BinaryOf(Sample);
    private static readonly string[] Nasty =
        ["", " ", "-1", "99999", "1,5", "NaN", "Infinity", "1e400", "5D1", "0x32", "2147483648", "400000000", "1.0", "λ", "\0", "{", "%%z", "^", "\\P", "\\U+D800", "SECTION", "ENDSEC", "EOF", "BLOCK", new('x', 3000)];

    /// <summary>A file with some of its bytes or lines changed, lost, doubled or swapped.</summary>
    private static readonly Gen<byte[]> Mutated =
        from isBinary in Gen.Bool
        from edits in Gen.Select(Gen.Int[0, 5], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Byte, Gen.Int[0, 24]).Array[1, 4]
        select edits.Aggregate(isBinary ? Binary : Sample, (bytes, edit) => Changed(bytes, edit, isBinary));

    [Fact]
    public void Ten_thousand_damaged_files_are_read_or_refused_with_a_place()
    {
        var (read, all) = (0, 0);
        Mutated.Always(
            bytes =>
            {
                Interlocked.Increment(ref all);
                if (Stands(bytes))
                {
                    Interlocked.Increment(ref read);
                }
            },
            cases: 10_000, print: bytes => Convert.ToHexString(bytes.AsSpan(0, Math.Min(64, bytes.Length))));
        Assert.InRange((double)read / all, 0.05, 0.95);
    }

    [Fact]
    public void A_file_cut_off_anywhere_is_refused()
    {
        for (var length = 0; length < Sample.Length - 10; length += 97)
        {
            Assert.ThrowsAny<DxfReadException>(() => DxfDrawing.Read(new MemoryStream(Sample, 0, length)));
        }

        for (var length = 0; length < Binary.Length - 10; length += 97)
        {
            Assert.ThrowsAny<DxfReadException>(() => DxfDrawing.Read(new MemoryStream(Binary, 0, length)));
        }
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("a drawing\n", 1)]
    [InlineData("  0\nSECTION\n  2\nHEADER\n", 3)]
    [InlineData("  0\nSECTION\n  2\nHEADER\n  9\n$X\n  0\nSECTION\n  2\nTABLES\n  0\nENDSEC\n  0\nEOF\n", 7)]
    [InlineData("  0\nSECTION\n  2\nHEADER\n  0\nENDSEC\n  0\nLINE\n  0\nEOF\n", 7)]
    [InlineData("  0\nSECTION\n  2\nHEADER\n  0\nENDSEC\n", 5)]
    [InlineData("  0\nSECTION\n  2\nHEADER\n1e3\n$X\n", 5)]
    [InlineData("  0\nSECTION\n  2\nHEADER\n 99999\n$X\n", 5)]
    [InlineData("  0\nSECTION\n  2\nHEADER\n  9\n", 5)]
    public void What_is_no_drawing_is_refused_with_its_line(string text, int line) =>
        Assert.Equal(line, Assert.ThrowsAny<DxfReadException>(() => DxfFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)))).Line);

    [Fact]
    public void Limits_end_in_a_message()
    {
        foreach (var (limits, word) in (IEnumerable<(ReadLimits, string)>)
        [
            (ReadLimits.Usual with { Bytes = 1000 }, "larger"), (ReadLimits.Usual with { Tags = 100 }, "groups"),
            (ReadLimits.Usual with { Records = 10 }, "records"), (ReadLimits.Usual with { LineBytes = 20 }, "longer"),
        ])
        {
            Assert.Contains(word, Assert.ThrowsAny<DxfReadException>(() => DxfFile.Read(new MemoryStream(Sample), limits)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_value_that_is_no_number_is_found_with_its_line_and_the_rest_is_read()
    {
        var edited = new Edited();
        edited.Set(edited.Find("CIRCLE", SampleDrawing.Cut)[0], 40, _ => "1,5");
        var read = edited.Drawing;
        var finding = Assert.Single(read.File.Findings);
        Assert.Equal("CIRCLE: group 40 should be a number, but is '1,5'.", finding.Text);
        Assert.Equal("1,5", Encoding.UTF8.GetString(edited.Bytes).Split("\r\n")[finding.Line]);
        Assert.Equal("CIRCLE", Assert.Single(read.Entities, entity => entity.Entity is null).Kind);
        Assert.Equal(EditKind.Changed, Assert.Single(DrawingEdits.Of(read)).Kind);
    }

    [Fact]
    public void Counts_are_claims_and_nothing_is_sized_by_them()
    {
        var edited = new Edited();
        edited.Set(edited.Find("HATCH", "part=roof.deck")[0], 93, _ => "2000000000").Set(edited.Find("LWPOLYLINE", "part=roof.membrane")[0], 90, _ => "400000000");
        Assert.Empty(DrawingEdits.Of(edited.Drawing));
    }

    [Fact]
    public void A_damaged_preset_or_record_of_issue_is_told_and_not_believed()
    {
        var preset = new Edited();
        var record = preset.Find("XRECORD", "detailgen 1")[0] - 1;
        preset.Set(record, 90, length => length + "0");
        Assert.Null(preset.Drawing.Provenance);
        Assert.Contains(preset.Drawing.File.Findings, finding => finding.Text.Contains("preset", StringComparison.Ordinal));

        var issued = new Edited();
        issued.Set(record - 1, 90, _ => "7");
        Assert.Null(issued.Drawing.Issued);
        Assert.Contains(issued.Drawing.File.Findings, finding => finding.Text.Contains("issued", StringComparison.Ordinal));
    }

    [Fact]
    public void A_field_of_a_title_block_whose_place_is_no_number_is_told_and_left_out()
    {
        var edited = new Edited();
        edited.Set(edited.Find("ATTRIB", "")[0], 10, _ => " ");
        Assert.Contains(edited.Drawing.File.Findings, finding => finding.Text.StartsWith("ATTRIB", StringComparison.Ordinal));
        Assert.NotEmpty(DrawingEdits.Of(edited.Drawing));
    }

    [Fact]
    public void A_preset_that_was_changed_within_its_length_is_told_and_not_believed()
    {
        var preset = new Edited();
        var record = preset.Find("XRECORD", "detailgen 1")[0] - 1;
        preset.Set(record, 1, text => (text[0] == 'x' ? 'y' : 'x') + text[1..]);
        Assert.Null(preset.Drawing.Provenance);
        Assert.Contains(preset.Drawing.File.Findings, finding => finding.Text.Contains("changed since issue", StringComparison.Ordinal));
    }

    /// <summary>Whether it could be read.</summary>
    private static bool Stands(byte[] bytes)
    {
        try
        {
            var drawing = DxfDrawing.Read(new MemoryStream(bytes));
            if (drawing.Issued is not null)
            {
                DrawingEdits.Of(drawing);
            }

            return true;
        }
        catch (DxfReadException fault)
        {
            Assert.True(fault.Line >= 0);
            Assert.NotEmpty(fault.Message);
            return false;
        }
    }

    private static byte[] Changed(byte[] bytes, (int Kind, double From, double To, byte Byte, int Word) edit, bool isBinary)
    {
        if (bytes.Length < 4)
        {
            return bytes;
        }

        var (a, b) = ((int)(edit.From * (bytes.Length - 1)), (int)(edit.To * (bytes.Length - 1)));
        switch (edit.Kind)
        {
            case 0:
                return [.. bytes[..a], edit.Byte, .. bytes[(a + 1)..]];
            case 1:
                return bytes[..Math.Max(a, b)];
            case 2:
                return [.. bytes[..a], .. bytes[Math.Min(bytes.Length, a + (b % 200))..]];
            case 3 when !isBinary:
                // a whole line takes another value
                var start = Array.LastIndexOf(bytes, (byte)'\n', a) + 1;
                var end = Array.IndexOf(bytes, (byte)'\r', a) is >= 0 and var found ? found : bytes.Length;
                return start >= end ? bytes : [.. bytes[..start], .. Encoding.UTF8.GetBytes(Nasty[edit.Word % Nasty.Length]), .. bytes[end..]];
            case 4:
                return [.. bytes[..a], .. bytes[Math.Min(a, b)..Math.Max(a, b)][..Math.Min(400, Math.Abs(a - b))], .. bytes[a..]];
            default:
                return [.. bytes[..a], .. Encoding.UTF8.GetBytes(Nasty[edit.Word % Nasty.Length]), .. bytes[a..]];
        }
    }

    private static byte[] BinaryOf(byte[] text)
    {
        using var output = new MemoryStream();
        DxfFile.Read(new MemoryStream(text)).WriteBinary(output);
        return output.ToArray();
    }
}
