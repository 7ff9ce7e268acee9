using System.Text;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Writing;

namespace DetailGen.Dxf.Reading;

/// <summary>What was drawn when a drawing was issued.</summary>
/// <param name="Digest">Of every entity.</param>
/// <param name="Count">Of all entities.</param>
/// <param name="Parts">Each part, and what belongs to none layer by layer.</param>
public sealed record IssuedContent(string Digest, int Count, IReadOnlyList<IssuedPart> Parts);

/// <summary>A part of an issued drawing.</summary>
/// <param name="Id">The part's id, or <c>layer:</c> and a name for what belongs to no part.</param>
/// <param name="Corner">The least x and y of the places that its entities name.</param>
public sealed record IssuedPart(string Id, int Count, string Digest, DxfPoint Corner);

/// <summary>The records that this project keeps in a drawing: the preset, the digests, the tool.</summary>
internal static class OwnRecords
{
    /// <summary>Nulls where there are none; damaged ones are told among the file's findings.</summary>
    public static (Provenance? Provenance, IssuedContent? Issued) Read(DxfFile file)
    {
        var records = new Dictionary<ulong, RecordReader>();
        RecordReader? root = null;
        foreach (var record in file.Records("OBJECTS"))
        {
            if (record.Kind is "DICTIONARY" or "XRECORD")
            {
                var reader = new RecordReader(file, record);
                root ??= record.Kind == "DICTIONARY" ? reader : null;
                records.TryAdd(reader.Handle(5), reader);
            }
        }

        if (Entry(root, Provenance.Application) is not { } own)
        {
            return (null, null);
        }

        var (parameters, tool) = (Parameters(file, Entry(own, "PARAMETERS")), Entry(own, "TOOL")?.TextOrNull(1));
        return (parameters is null ? null : new(parameters, tool ?? ""), Issued(file, Entry(own, "DIGEST")));

        RecordReader? Entry(RecordReader? dictionary, string key)
        {
            for (var tag = dictionary?.First ?? 0; tag + 1 < dictionary?.End; tag++)
            {
                if (dictionary.Code(tag) == 3 && dictionary.Code(tag + 1) is 350 or 360 && dictionary.TextAt(tag).Equals(key, StringComparison.OrdinalIgnoreCase))
                {
                    return records.GetValueOrDefault(dictionary.HandleAt(tag + 1));
                }
            }

            return null;
        }
    }

    // Chunks, behind their length in bytes and before their digest: what was lost or changed is seen. Drawings of before have no digest.
    private static string? Parameters(DxfFile file, RecordReader? record)
    {
        if (record is null)
        {
            return null;
        }

        var text = new StringBuilder();
        for (var tag = record.First; tag < record.End; tag++)
        {
            if (record.Code(tag) == 1)
            {
                text.Append(record.TextAt(tag));
            }
        }

        var joined = text.ToString();
        if (LengthOf(record) != Encoding.UTF8.GetByteCount(joined))
        {
            file.Found(record.First, "The preset in the drawing is damaged: it has not the length that it should.");
            return null;
        }

        if (record.TextOrNull(TextDigest.Code) is { } digest && digest != TextDigest.Of(joined))
        {
            file.Found(record.First, "The preset in the drawing was changed since issue: it has not the digest that it should.");
            return null;
        }

        return joined;
    }

    private static IssuedContent? Issued(DxfFile file, RecordReader? record)
    {
        if (record is null)
        {
            return null;
        }

        var parts = new List<IssuedPart>();
        try
        {
            for (var tag = record.First; tag < record.End; tag++)
            {
                // id, count, digest, and the corner behind them
                if (record.Code(tag) == 1 && tag > record.First + 1 && tag + 4 < record.End && record.Code(tag + 1) == 90 && record.Code(tag + 2) == 1
                    && record.Code(tag + 3) == 10 && record.Code(tag + 4) == 20)
                {
                    parts.Add(new(record.TextAt(tag), record.IntegerAt(tag + 1), record.TextAt(tag + 2), new(record.NumberAt(tag + 3), record.NumberAt(tag + 4))));
                    tag += 4;
                }
            }

            if (record.Text(1) is var whole && whole.StartsWith(ContentDigest.Algorithm + " ", StringComparison.Ordinal) && parts.Sum(part => (long)part.Count) == record.Integer(90, -1))
            {
                return new(whole[(ContentDigest.Algorithm.Length + 1)..], record.Integer(90), parts);
            }
        }
        catch (UnreadableException)
        {
            // told below
        }

        file.Found(record.First, "The record of what was issued is damaged.");
        return null;
    }

    private static int? LengthOf(RecordReader record)
    {
        try
        {
            return record.Integer(90);
        }
        catch (UnreadableException)
        {
            return null; // no length fits the text
        }
    }
}
