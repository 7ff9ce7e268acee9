using System.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace DetailGen.Details.Reading;

/// <summary>
/// Makes a tree of a YAML text. Whatever the text, there is an answer: a tree, or one clear fault for what stops the reading.
/// Anchors, aliases and tags are refused, so nothing in a text can grow on reading or name a type.
/// </summary>
public static class NodeReader
{
    /// <param name="path">Also what marks call the file.</param>
    public static ReadText File(string path, ReadingLimits limits)
    {
        var read = GivenFile.Read(path, limits.Bytes);
        return read.IsGood ? Bytes(read.Value, path, limits) : new(null, read.Faults);
    }

    public static ReadText Bytes(ReadOnlySpan<byte> bytes, string name, ReadingLimits limits)
    {
        if (bytes.Length > limits.Bytes)
        {
            return Fault(Messages.FileTooLong(new(name, 1, 1), limits.Bytes));
        }

        if (bytes.StartsWith("\uFEFF"u8))
        {
            bytes = bytes[3..];
        }

        return RawText.FirstFault(bytes, name) is { } fault ? Fault(fault) : Text(Encoding.UTF8.GetString(bytes), name, limits);
    }

    /// <param name="text">Free of control characters.</param>
    /// <param name="linesBefore">Lines of the file that go before this text.</param>
    public static ReadText Text(string text, string name, ReadingLimits limits, int linesBefore = 0)
    {
        if (RawText.FirstTab(text, name, linesBefore) is { } tab)
        {
            return Fault(tab);
        }

        var tree = new TreeBuilder(name, limits, linesBefore);
        try
        {
            var root = tree.Read(new Parser(new Scanner(new StringReader(text), skipComments: true)));
            return new(root, tree.Faults);
        }
        catch (TextRefused refused)
        {
            return new(null, [.. tree.Faults, refused.Fault]);
        }
        catch (YamlException fault)
        {
            var line = (int)Math.Max(1, fault.Start.Line) + linesBefore;
            return new(null, [.. tree.Faults, Messages.BadYaml(new(name, line, (int)Math.Max(1, fault.Start.Column)), fault.Message)]);
        }
        catch (Exception fault) when (fault is ArgumentException or InvalidOperationException or OverflowException or IndexOutOfRangeException)
        {
            // the parser's own slips on malformed text; where it stood is not told
            return new(null, [.. tree.Faults, Messages.BadYaml(new(name, 1 + linesBefore, 1), "")]);
        }
    }

    private static ReadText Fault(Diagnostic fault) => new(null, [fault]);

    /// <summary>Ends a reading that cannot go on; it never leaves this file.</summary>
    private sealed class TextRefused(Diagnostic fault) : Exception
    {
        public Diagnostic Fault { get; } = fault;
    }

    /// <summary>Events → nodes. Recursion is safe because depth is limited.</summary>
    private sealed class TreeBuilder(string name, ReadingLimits limits, int linesBefore)
    {
        private readonly List<Diagnostic> _faults = [];
        private int _nodes;

        public IReadOnlyList<Diagnostic> Faults => _faults;

        public Node? Read(Parser events)
        {
            events.Consume<StreamStart>();
            if (events.Accept<StreamEnd>(out _))
            {
                throw new TextRefused(Messages.Empty(new(name, 1, 1)));
            }

            events.Consume<DocumentStart>();
            var root = Next(events, 0);
            events.Consume<DocumentEnd>();
            if (events.Accept<DocumentStart>(out var second))
            {
                throw new TextRefused(Messages.SeveralDocuments(At(second.Start)));
            }

            events.Consume<StreamEnd>();
            return root is ScalarNode { Text: "", Quoted: false } ? throw new TextRefused(Messages.Empty(new(name, 1, 1))) : root;
        }

        private Node Next(Parser events, int depth)
        {
            var here = events.Consume<ParsingEvent>();
            var at = At(here.Start);
            if (++_nodes > limits.Nodes)
            {
                throw new TextRefused(Messages.TooManyNodes(at, limits.Nodes));
            }

            if (here is AnchorAlias)
            {
                throw new TextRefused(Messages.NoAliases(at));
            }

            if (here is NodeEvent node)
            {
                Refuse(node, at);
            }

            if (here is not Scalar && depth >= limits.Depth)
            {
                throw new TextRefused(Messages.TooDeep(at, limits.Depth));
            }

            return here switch
            {
                Scalar scalar => new ScalarNode(at, scalar.Value, scalar.Style is not (ScalarStyle.Plain or ScalarStyle.Any)),
                SequenceStart => List(events, at, depth),
                MappingStart => Map(events, at, depth),
                _ => throw new TextRefused(Messages.BadYaml(at, "")),
            };
        }

        private ListNode List(Parser events, Mark at, int depth)
        {
            var items = new List<Node>();
            while (!events.TryConsume<SequenceEnd>(out _))
            {
                items.Add(Next(events, depth + 1));
            }

            return new(at, items);
        }

        private MapNode Map(Parser events, Mark at, int depth)
        {
            var entries = new List<Entry>();
            var seen = new Dictionary<string, Node>(StringComparer.Ordinal);
            while (!events.TryConsume<MappingEnd>(out _))
            {
                var key = Next(events, depth + 1);
                var value = Next(events, depth + 1);
                if (key is not ScalarNode { Text.Length: > 0 } word)
                {
                    _faults.Add(Messages.NoPlainKey(key.At));
                }
                else if (!seen.TryAdd(word.Text, word))
                {
                    _faults.Add(Messages.DuplicateKey(word.At, word.Text, seen[word.Text].At));
                }
                else
                {
                    entries.Add(new(word.Text, word.At, value));
                }
            }

            return new(at, entries);
        }

        private static void Refuse(NodeEvent node, Mark at)
        {
            if (!node.Anchor.IsEmpty)
            {
                throw new TextRefused(Messages.NoAliases(at));
            }

            if (!node.Tag.IsEmpty)
            {
                throw new TextRefused(Messages.NoTags(at));
            }
        }

        private Mark At(YamlDotNet.Core.Mark mark) => new(name, (int)mark.Line + linesBefore, (int)mark.Column);
    }
}
