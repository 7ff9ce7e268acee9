namespace DetailGen.Physics.Fields;

/// <summary>Numbers from 0 that are joined into groups, each known by one of its members.</summary>
internal sealed class Groups(int count)
{
    private readonly int[] _parent = [.. Enumerable.Range(0, count)];

    internal int Of(int member)
    {
        while (_parent[member] != member)
        {
            member = _parent[member] = _parent[_parent[member]];
        }

        return member;
    }

    internal void Join(int one, int other) => _parent[Of(one)] = Of(other);
}
