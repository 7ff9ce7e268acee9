namespace DetailGen.Physics.Fields;

/// <summary>Unknowns of the flow function: what passes between two places is the difference of its values. Along edges that let no heat pass it keeps one value; in each
/// connected solid one value is free and held at 0. Round a hole it grows by what the hole takes up, so from each such hole a path of sides leads to an edge already reached,
/// and on one bank of it the values stand higher by an unknown of the hole.</summary>
internal sealed class FlowUnknowns
{
    private readonly Mesh _mesh;
    private readonly Func<int, bool> _open;
    private readonly int[] _after; // exposed side by the corner it starts at, solid on its left; -1 inside
    private readonly int[] _before; // the one that ends there
    private readonly Dictionary<int, List<(int Hole, int Sign)>> _banks = [];

    /// <param name="open">Whether heat passes a boundary line.</param>
    internal FlowUnknowns(Mesh mesh, Func<int, bool> open)
    {
        (_mesh, _open) = (mesh, open);
        (_after, _before) = (new int[mesh.Places.Length], new int[mesh.Places.Length]);
        Array.Fill(_after, -1);
        Array.Fill(_before, -1);
        var still = new Groups(mesh.Places.Length + mesh.Sides.Length);
        var (loops, solids) = (new Groups(mesh.Places.Length), new Groups(mesh.Places.Length));
        for (var at = 0; at < mesh.Sides.Length; at++)
        {
            var side = mesh.Sides[at];
            solids.Join(side.A, side.B);
            if (side.Line < 0)
            {
                continue;
            }

            (_after[side.A], _before[side.B]) = (at, at);
            loops.Join(side.A, side.B);
            if (!open(side.Line))
            {
                still.Join(side.A, side.B);
                still.Join(side.A, mesh.Places.Length + at);
            }
        }

        Of = Numbered(still, solids);
        foreach (var solid in Enumerable.Range(0, mesh.Places.Length).Where(Reachable).GroupBy(solids.Of))
        {
            Lead([.. solid], loops);
        }
    }

    /// <summary>By node (corners, then middles of sides); -1 where the value is held at 0.</summary>
    internal int[] Of { get; }

    internal int Count { get; private set; }

    /// <summary>Unknowns that are added to the values of a triangle, by the number of its value (0 to 5).</summary>
    internal IEnumerable<(int Value, int Hole, int Sign)> BanksOf(int triangle) => _banks.Count == 0 ? [] :
        Enumerable.Range(0, Elements.Nodes).SelectMany(value => _banks.GetValueOrDefault((Elements.Nodes * triangle) + value) ?? [], (value, bank) => (value, bank.Hole, bank.Sign));

    // In each solid the longest edge without flow is held: it has the most neighbours.
    private int[] Numbered(Groups still, Groups solids)
    {
        var size = new int[_mesh.Places.Length + _mesh.Sides.Length];
        for (var node = 0; node < size.Length; node++)
        {
            size[still.Of(node)]++;
        }

        int Solid(int node) => solids.Of(node < _mesh.Places.Length ? node : _mesh.Sides[node - _mesh.Places.Length].A);
        var held = new int[_mesh.Places.Length];
        Array.Fill(held, -1);
        for (var node = 0; node < size.Length; node++)
        {
            var solid = Solid(node);
            held[solid] = held[solid] < 0 || size[node] > size[held[solid]] ? node : held[solid];
        }

        var number = new int[size.Length];
        Array.Fill(number, -1);
        for (var node = 0; node < size.Length; node++)
        {
            number[node] = still.Of(node) == node && held[Solid(node)] != node ? Count++ : -1;
        }

        return [.. number.Select((_, node) => number[still.Of(node)])];
    }

    // an end of an exposed side that lets heat pass
    private bool Reachable(int corner) => _after[corner] >= 0 && (_open(_mesh.Sides[_after[corner]].Line) || _open(_mesh.Sides[_before[corner]].Line));

    private void Lead(int[] ends, Groups loops)
    {
        var reached = new HashSet<int> { loops.Of(ends[0]) };
        var wanted = ends.Select(loops.Of).ToHashSet();
        if (wanted.Count == 1)
        {
            return;
        }

        var beside = _mesh.Sides.Select((side, at) => (side, at)).Where(one => one.side.Other >= 0)
            .SelectMany(one => new[] { (From: one.side.A, To: one.side.B, one.at), (From: one.side.B, To: one.side.A, one.at) }).ToLookup(one => one.From);
        while (reached.Count < wanted.Count)
        {
            var from = ends.Where(end => reached.Contains(loops.Of(end))).ToDictionary(end => end, _ => (Corner: -1, Side: -1));
            var waiting = new Queue<int>(from.Keys);
            var found = -1;
            while (found < 0 && waiting.TryDequeue(out var corner))
            {
                foreach (var (_, to, side) in beside[corner])
                {
                    if (found < 0 && from.TryAdd(to, (corner, side)))
                    {
                        waiting.Enqueue(to);
                        found = _after[to] >= 0 && Reachable(to) && !reached.Contains(loops.Of(to)) ? to : -1;
                    }
                }
            }

            if (found < 0)
            {
                throw new InvalidOperationException("No path leads from a hole to an edge."); // the sides inside a connected solid are connected
            }

            reached.Add(loops.Of(found));
            Raise(found, from, Count++);
        }
    }

    // walked from the hole to the edge; the left bank is the higher one
    private void Raise(int start, Dictionary<int, (int Corner, int Side)> from, int hole)
    {
        var (corner, came) = (start, -1);
        while (true)
        {
            var (next, goes) = from[corner];
            if (goes >= 0)
            {
                Bank(Left(goes, corner), 3 + (Left(goes, corner) % 3), hole, 1);
            }

            Sectors(corner, came, goes, hole);
            if (goes < 0)
            {
                return;
            }

            (corner, came) = (next, goes);
        }
    }

    /// <summary>The slot opposite the side, in the triangle on the left of who leaves this corner along it.</summary>
    private int Left(int side, int corner) => _mesh.Sides[side].A == corner ? _mesh.Sides[side].Slot : _mesh.Sides[side].Other;

    private int Right(int side, int corner) => _mesh.Sides[side].A == corner ? _mesh.Sides[side].Other : _mesh.Sides[side].Slot;

    // At an edge that crosses neither bank the corner keeps its own value; otherwise an edge without flow would not keep one. So of the two banks the one is moved that has no such edge.
    private void Sectors(int corner, int came, int goes, int hole)
    {
        var (left, leftEnd) = goes >= 0 ? Round(Left(goes, corner), corner, true, came) : Round(Right(came, corner), corner, false, goes);
        var moved = came >= 0 && goes >= 0 ? leftEnd == came : _open(_mesh.Sides[leftEnd].Line);
        if (!moved)
        {
            left = (goes >= 0 ? Round(Right(goes, corner), corner, false, came) : Round(Left(came, corner), corner, true, goes)).Slots;
        }

        foreach (var slot in left)
        {
            Bank(slot, slot % 3, hole, moved ? 1 : -1);
        }
    }

    /// <summary>Corner slots of the triangles round a corner, from the one with this slot opposite its first side, to the side stopped at or to the edge.</summary>
    private (List<int> Slots, int End) Round(int slot, int corner, bool anticlockwise, int stop)
    {
        var slots = new List<int>();
        while (true)
        {
            var own = _mesh.Triangles[slot / 3][(slot + 1) % 3] == corner ? Mesh.Turn(slot, 1) : Mesh.Turn(slot, 2);
            slots.Add(own);
            var side = _mesh.SidesOf[Mesh.Turn(own, anticlockwise ? 1 : 2)];
            var (here, there) = (_mesh.Sides[side].Slot, _mesh.Sides[side].Other);
            if (side == stop || there < 0)
            {
                return (slots, side);
            }

            slot = here / 3 == slot / 3 ? there : here;
        }
    }

    private void Bank(int slot, int value, int hole, int sign)
    {
        var key = (Elements.Nodes * (slot / 3)) + value;
        (_banks.TryGetValue(key, out var list) ? list : _banks[key] = []).Add((hole, sign));
    }
}
