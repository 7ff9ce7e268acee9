using System.Runtime.InteropServices;
using System.Security.Cryptography;
using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Writing;

/// <summary>Digests of what is drawn: of an entity, of a part, of the whole. They show edits; they are no protection against forgery.</summary>
/// <remarks>SHA-256 of an entity's line of values: kind, space, layer, colour, linetype, weight and the values of its kind, on the grid
/// of the file. The digest of several is SHA-256 of their digests, sorted and joined, so that the order of drawing and of saving does
/// not count. Joining digests rather than the lines themselves lets a part be told from its entities without walking them again.</remarks>
internal sealed class ContentDigest
{
    public const string Algorithm = "sha-256";

    private readonly Dictionary<PlannedSpace, Digest[]> _spaces = [];
    private readonly Dictionary<PlannedSpace, Digest[]> _windows = [];

    private ContentDigest(IEnumerable<PlannedSpace> drawn)
    {
        var sink = new CanonSink();
        var all = new List<Digest>();
        var parts = new Dictionary<string, (List<Digest> Digests, CornerSink Corner)>(StringComparer.Ordinal);
        foreach (var space in drawn)
        {
            _spaces.Add(space, Taken(space.Entities, space));
            _windows.Add(space, space.Sheet is { } sheet ? Taken([.. sheet.Viewports.Select(Window.Of)], space) : []);
        }

        Count = all.Count;
        Whole = OfAll(all);
        Parts = [.. parts.OrderBy(part => part.Key, StringComparer.Ordinal)
            .Select(part => new PartDigest(part.Key, part.Value.Digests.Count, OfAll(part.Value.Digests), part.Value.Corner.Corner))];

        Digest[] Taken(IReadOnlyList<Entity> entities, PlannedSpace space)
        {
            var digests = new Digest[entities.Count];
            for (var i = 0; i < digests.Length; i++)
            {
                var entity = entities[i];
                digests[i] = Of(entity, space.Name, sink);
                var id = OwnerOf(entity.Part?.Id, entity.Layer);
                if (!parts.TryGetValue(id, out var part))
                {
                    parts[id] = part = ([], new());
                }

                part.Digests.Add(digests[i]);
                entity.Walk(part.Corner);
            }

            all.AddRange(digests);
            return digests;
        }
    }

    /// <summary>Of every entity and window of the drawing; 64 hex digits.</summary>
    public string Whole { get; }

    public int Count { get; }

    /// <summary>Sorted by id.</summary>
    public IReadOnlyList<PartDigest> Parts { get; }

    /// <summary>Pictures of dimensions are left out: any program redraws them from the dimension.</summary>
    public static ContentDigest Of(WritePlan plan) => new(plan.Spaces.Where(space => !space.IsPicture));

    public Digest Of(PlannedSpace space, int index) => _spaces[space][index];

    public Digest OfWindow(PlannedSpace space, int index) => _windows[space][index];

    /// <summary>What an entity is counted under: its part, or its layer where it belongs to none.</summary>
    public static string OwnerOf(string? part, string layer) => part ?? "layer:" + layer;

    /// <exception cref="ArgumentException">A value that no drawing can hold.</exception>
    public static Digest Of(Entity entity, string space, CanonSink sink)
    {
        sink.Clear();
        sink.Name(entity.Kind);
        sink.Name(space);
        sink.Name(entity.Layer);
        sink.Integer(62, entity.Color?.Index ?? 256);
        sink.Integer(420, entity.Color?.TrueColor ?? -1);
        sink.Name(entity.Linetype ?? "ByLayer");
        sink.Integer(370, entity.Weight ?? -1);
        try
        {
            entity.Walk(sink);
        }
        catch (ArgumentException fault)
        {
            throw entity.Told(fault);
        }

        return Digest.Of(sink.Line);
    }

    public static string OfAll(List<Digest> digests)
    {
        digests.Sort();
        return Digest.Of(MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(digests))).ToString();
    }
}

/// <summary>A SHA-256 digest: its bytes in order, eight by eight.</summary>
internal readonly record struct Digest(ulong A, ulong B, ulong C, ulong D) : IComparable<Digest>
{
    public const int ShortLetters = 16;

    public static Digest Of(ReadOnlySpan<byte> content)
    {
        Span<Digest> digest = stackalloc Digest[1];
        SHA256.HashData(content, MemoryMarshal.AsBytes(digest));
        return digest[0];
    }

    /// <summary>By the bytes in order.</summary>
    public int CompareTo(Digest other)
    {
        var (own, others) = (this, other);
        return Bytes(ref own).SequenceCompareTo(Bytes(ref others));
    }

    /// <summary>64 hex digits.</summary>
    public override string ToString()
    {
        var own = this;
        return Convert.ToHexStringLower(Bytes(ref own));
    }

    /// <summary>Writes the first 16 hex digits.</summary>
    public void Short(Span<char> target)
    {
        var own = this;
        Convert.TryToHexStringLower(Bytes(ref own)[..(ShortLetters / 2)], target, out _);
    }

    private static ReadOnlySpan<byte> Bytes(ref Digest digest) => MemoryMarshal.AsBytes(new ReadOnlySpan<Digest>(in digest));
}

/// <summary>What is drawn of a part.</summary>
/// <param name="Id">See <see cref="ContentDigest.OwnerOf"/>.</param>
/// <param name="Corner">The least x and y of the places that its entities name.</param>
internal sealed record PartDigest(string Id, int Count, string Digest, DxfPoint Corner);
