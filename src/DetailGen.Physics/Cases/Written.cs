using System.Text;
using System.Text.Json;

namespace DetailGen.Physics.Cases;

/// <summary>A value as it stands in a JSON file, with its place. Keys keep their order.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1, in characters.</param>
internal abstract record Written(int Line, int Column)
{
    /// <summary>An object.</summary>
    internal sealed record Map(int Line, int Column, IReadOnlyList<Entry> Entries) : Written(Line, Column)
    {
        internal Written? Get(string key) => Entries.FirstOrDefault(entry => string.Equals(entry.Key, key, StringComparison.Ordinal))?.Value;
    }

    /// <summary>A key of an object with its value.</summary>
    internal sealed record Entry(string Key, int Line, int Column, Written Value);

    /// <summary>An array.</summary>
    internal sealed record List(int Line, int Column, IReadOnlyList<Written> Items) : Written(Line, Column);

    /// <summary>A number, also as it is written.</summary>
    internal sealed record Number(int Line, int Column, double Value, string Text) : Written(Line, Column);

    /// <summary>A string.</summary>
    internal sealed record Words(int Line, int Column, string Value) : Written(Line, Column);

    /// <summary>true or false.</summary>
    internal sealed record Flag(int Line, int Column, bool Value) : Written(Line, Column);

    /// <summary>null.</summary>
    internal sealed record Null(int Line, int Column) : Written(Line, Column);

    /// <summary>As it may be repeated in a message: a number or word in full, other things by kind.</summary>
    internal string Shown => this switch
    {
        Number number => number.Text,
        Words words => words.Value,
        Flag flag => flag.Value ? "true" : "false",
        Null => "null",
        List list => $"a list of {list.Items.Count}",
        _ => "an object",
    };
}

/// <summary>Reads JSON text into a tree with places.</summary>
internal static class WrittenReader
{
    /// <summary>Deepest nesting that is read.</summary>
    internal const int Deepest = 32;

    /// <summary>Largest file that is read, in bytes.</summary>
    internal const int Largest = 64 * 1024 * 1024;

    /// <summary>The tree; null with a fault where the text is no JSON. A key that stands twice is a fault too.</summary>
    internal static Written? Read(byte[] text, Faults faults)
    {
        var start = text.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
        if (text.AsSpan(start).IndexOfAnyExcept(" \t\r\n"u8) < 0)
        {
            faults.Add(1, 1, null, null, Messages.EmptyFile());
            return null;
        }

        var places = new Places(text[start..]);
        var reader = new Utf8JsonReader(text.AsSpan(start), new JsonReaderOptions { MaxDepth = Deepest });
        try
        {
            reader.Read();
            var root = Value(ref reader, places, faults);
            reader.Read();
            return root;
        }
        catch (JsonException wrong)
        {
            faults.Add((int)(wrong.LineNumber ?? 0) + 1, (int)(wrong.BytePositionInLine ?? 0) + 1, null, null, Messages.NotJson(Plain(wrong.Message)));
            return null;
        }
        catch (InvalidOperationException wrong)
        {
            // Text with half a pair of surrogates, which JSON's grammar lets through.
            var (line, column) = places.Of(reader.TokenStartIndex);
            faults.Add(line, column, null, null, Messages.NotJson(wrong.Message));
            return null;
        }
    }

    // the first sentence, without what the library says to programmers
    private static string Plain(string said)
    {
        var sentence = said.Split(" LineNumber:")[0].Split(". ")[0].Replace(" which is not supported in this mode", "", StringComparison.Ordinal);
        return sentence.EndsWith('.') ? sentence : sentence + ".";
    }

    private static Written Value(ref Utf8JsonReader reader, Places places, Faults faults)
    {
        var (line, column) = places.Of(reader.TokenStartIndex);
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                var entries = new List<Written.Entry>();
                var seen = new HashSet<string>(StringComparer.Ordinal);
                while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
                {
                    var (keyLine, keyColumn) = places.Of(reader.TokenStartIndex);
                    var key = reader.GetString()!;
                    if (!seen.Add(key))
                    {
                        faults.Add(keyLine, keyColumn, key, null, Messages.KeyTwice(key));
                    }

                    reader.Read();
                    entries.Add(new(key, keyLine, keyColumn, Value(ref reader, places, faults)));
                }

                return new Written.Map(line, column, entries);
            case JsonTokenType.StartArray:
                var items = new List<Written>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                {
                    items.Add(Value(ref reader, places, faults));
                }

                return new Written.List(line, column, items);
            case JsonTokenType.Number:
                var text = Encoding.UTF8.GetString(reader.ValueSpan);
                return new Written.Number(line, column, reader.TryGetDouble(out var number) ? number : double.NaN, text);
            case JsonTokenType.String:
                return new Written.Words(line, column, reader.GetString()!);
            case JsonTokenType.True or JsonTokenType.False:
                return new Written.Flag(line, column, reader.GetBoolean());
            default:
                return new Written.Null(line, column);
        }
    }

    /// <summary>Turns byte positions, asked for in rising order, into lines and columns.</summary>
    private sealed class Places(byte[] text)
    {
        private int _at;
        private int _line = 1;
        private int _column = 1;

        internal (int Line, int Column) Of(long position)
        {
            for (; _at < position; _at++)
            {
                if (text[_at] == (byte)'\n')
                {
                    (_line, _column) = (_line + 1, 1);
                }
                else if ((text[_at] & 0xC0) != 0x80)
                {
                    _column++; // a character counts once, however many bytes it has
                }
            }

            return (_line, _column);
        }
    }
}
