using System.Text;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Dictionaries and free records, named by what they are called in the plan.</summary>
internal sealed class ObjectWriter(TagWriter writer, Handles handles)
{
    private const int MostChunkBytes = 240;

    /// <summary>A dictionary of key and object, sorted by key.</summary>
    /// <param name="owner">Null for the root.</param>
    public void Dictionary(string name, string? owner, IEnumerable<(string Key, string Name)> entries, bool ownsHard = false)
    {
        writer.Begin("DICTIONARY", handles.Object(name), owner is null ? 0 : handles.Object(owner));
        writer.Marker("AcDbDictionary");
        if (ownsHard)
        {
            writer.Integer(280, 1);
        }

        writer.Integer(281, 1);
        foreach (var entry in entries.OrderBy(entry => entry.Key, StringComparer.Ordinal))
        {
            writer.Text(3, entry.Key);
            writer.Handle(ownsHard ? 360 : 350, handles.Object(entry.Name));
        }
    }

    /// <summary>Begins a record; free groups follow.</summary>
    public void Record(string name, string owner)
    {
        writer.Begin("XRECORD", handles.Object(name), handles.Object(owner));
        writer.Marker("AcDbXrecord");
        writer.Integer(280, 1);
    }

    /// <summary>The length in bytes, then the text in pieces cut between letters. Line breaks and other control letters between the
    /// tokens of JSON may become blanks, since no value may hold them.</summary>
    public void LongText(string text)
    {
        var flat = string.Create(text.Length, text, (span, source) =>
        {
            for (var i = 0; i < span.Length; i++)
            {
                span[i] = source[i] is '\r' or '\n' or '\t' ? ' ' : source[i];
            }
        });
        writer.Integer(90, Encoding.UTF8.GetByteCount(flat));
        foreach (var chunk in Pieces(flat))
        {
            writer.Text(1, chunk);
        }

        writer.Text(TextDigest.Code, TextDigest.Of(flat));
    }

    // Plain cuts between runes: a blank at the end of a piece counts here as any other letter, and the length tells if one was lost.
    private static IEnumerable<string> Pieces(string text)
    {
        var (start, bytes, at) = (0, 0, 0);
        foreach (var rune in text.EnumerateRunes())
        {
            if (bytes + rune.Utf8SequenceLength > MostChunkBytes)
            {
                yield return text[start..at];
                (start, bytes) = (at, 0);
            }

            bytes += rune.Utf8SequenceLength;
            at += rune.Utf16SequenceLength;
        }

        if (at > start)
        {
            yield return text[start..];
        }
    }
}
