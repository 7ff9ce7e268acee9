using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace DetailGen.Physics.Fields;

/// <summary>A = L·Lᵀ of a system made of elements. Each part of the dissection sums its elements, or what its halves have left, in a small full matrix, and
/// eliminates the unknowns that no element outside it has.</summary>
/// <remarks>Multifrontal elimination: I. S. Duff, J. K. Reid, ACM Trans. Math. Softw. 9 (1983), from memory. Products are summed in one order on every machine, so that the same input gives the same bits.</remarks>
internal sealed class Factor
{
    private readonly List<Front> _fronts = [];

    internal Factor(Dissection dissection, Elements system) => new Builder(dissection, system, _fronts).Run();

    /// <summary>The unknowns of a part, those eliminated there first, and the rows of L that belong to the latter: row i has min(i + 1, eliminated) entries in use.</summary>
    private sealed record Front(int[] Unknown, int Eliminated, double[] Rows);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)] // most of a first calculation would be over before the runtime compiles it anew
    internal double[] Solve(double[] load)
    {
        var x = (double[])load.Clone();
        foreach (var front in _fronts)
        {
            var (n, unknown, rows) = (front.Eliminated, front.Unknown, front.Rows);
            for (var i = 0; i < unknown.Length; i++)
            {
                var sum = x[unknown[i]];
                var row = rows.AsSpan(i * n, n);
                for (var k = 0; k < Math.Min(i, n); k++)
                {
                    sum -= row[k] * x[unknown[k]];
                }

                x[unknown[i]] = i < n ? sum / row[i] : sum;
            }
        }

        for (var f = _fronts.Count - 1; f >= 0; f--)
        {
            var (n, unknown, rows) = (_fronts[f].Eliminated, _fronts[f].Unknown, _fronts[f].Rows);
            for (var i = unknown.Length - 1; i >= 0; i--)
            {
                var row = rows.AsSpan(i * n, n);
                var value = i < n ? x[unknown[i]] /= row[i] : x[unknown[i]];
                for (var k = 0; k < Math.Min(i, n); k++)
                {
                    x[unknown[k]] -= row[k] * value;
                }
            }
        }

        return x;
    }

    private sealed class Builder
    {
        private const int Block = 4;
        private readonly Dissection _dissection;
        private readonly Elements _system;
        private readonly List<Front> _fronts;
        private readonly int[] _total; // elements that have the unknown
        private readonly int[] _seen; // of these, how many lie in the part
        private readonly int[] _place; // of the unknown in the part's matrix
        private readonly Stack<Left> _left = [];
        private double[] _work = [];
        private double[] _columns = [];

        internal Builder(Dissection dissection, Elements system, List<Front> fronts)
        {
            (_dissection, _system, _fronts) = (dissection, system, fronts);
            (_total, _seen, _place) = (new int[system.Unknowns], new int[system.Unknowns], new int[system.Unknowns]);
            foreach (var unknown in system.Unknown.Concat(system.Further.Values.SelectMany(one => one.Unknown)))
            {
                if (unknown >= 0)
                {
                    _total[unknown]++;
                }
            }
        }

        /// <summary>What a part leaves to the part around it: unknowns, how many of its elements have each, and the lower half of their matrix.</summary>
        private sealed record Left(int[] Unknown, int[] Seen, double[] Matrix);

        internal void Run()
        {
            var met = new List<int>();
            foreach (var part in _dissection.Parts)
            {
                met.Clear();
                if (part.Whole)
                {
                    var triangles = _dissection.Order.AsSpan(part.From, part.To - part.From);
                    foreach (var t in triangles)
                    {
                        Meet(_system.Unknown.AsSpan(Elements.Nodes * t, Elements.Nodes), [], met);
                        if (_system.Further.TryGetValue(t, out var further))
                        {
                            Meet(further.Unknown, [], met);
                        }
                    }

                    var (unknown, eliminated) = Ordered(met);
                    foreach (var t in triangles)
                    {
                        Add(_system.Unknown.AsSpan(Elements.Nodes * t, Elements.Nodes), _system.Matrix.AsSpan(Elements.Square * t, Elements.Square), unknown.Length);
                        if (_system.Further.TryGetValue(t, out var further))
                        {
                            Add(further.Unknown, further.Matrix, unknown.Length);
                        }
                    }

                    Eliminate(unknown, eliminated);
                }
                else
                {
                    var (far, near) = (_left.Pop(), _left.Pop());
                    Meet(near.Unknown, near.Seen, met);
                    Meet(far.Unknown, far.Seen, met);
                    var (unknown, eliminated) = Ordered(met);
                    Add(near.Unknown, near.Matrix, unknown.Length);
                    Add(far.Unknown, far.Matrix, unknown.Length);
                    Eliminate(unknown, eliminated);
                }
            }
        }

        private void Meet(ReadOnlySpan<int> unknowns, ReadOnlySpan<int> times, List<int> met)
        {
            for (var i = 0; i < unknowns.Length; i++)
            {
                var unknown = unknowns[i];
                if (unknown < 0)
                {
                    continue;
                }

                if (_seen[unknown] == 0)
                {
                    met.Add(unknown);
                }

                _seen[unknown] += times.Length > 0 ? times[i] : 1;
            }
        }

        private (int[] Unknown, int Eliminated) Ordered(List<int> met)
        {
            var unknown = new int[met.Count];
            int low = 0, high = unknown.Length;
            foreach (var one in met)
            {
                unknown[_seen[one] == _total[one] ? low++ : --high] = one;
            }

            for (var i = 0; i < unknown.Length; i++)
            {
                _place[unknown[i]] = i;
            }

            var size = unknown.Length * unknown.Length;
            if (_work.Length < size)
            {
                _work = new double[2 * size];
            }

            Array.Clear(_work, 0, size);
            return (unknown, low);
        }

        // only entries on and below the diagonal are kept
        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        private void Add(ReadOnlySpan<int> unknowns, ReadOnlySpan<double> matrix, int stride)
        {
            for (var i = 0; i < unknowns.Length; i++)
            {
                if (unknowns[i] < 0)
                {
                    continue;
                }

                var row = _place[unknowns[i]];
                for (var j = 0; j <= i; j++)
                {
                    if (unknowns[j] < 0)
                    {
                        continue;
                    }

                    var column = _place[unknowns[j]];
                    var value = matrix[(i * unknowns.Length) + j];
                    // two nodes of a triangle may be one unknown: their coefficient stands on both sides of the diagonal
                    _work[(Math.Max(row, column) * stride) + Math.Min(row, column)] += row == column && i != j ? 2 * value : value;
                }
            }
        }

        private void Eliminate(int[] unknown, int n)
        {
            var m = unknown.Length;
            for (var first = 0; first < n; first += Block)
            {
                Columns(first, Math.Min(Block, n - first), m);
                Subtract(first, Math.Min(Block, n - first), m);
            }

            // what is above the diagonal is neither set nor read
            var rows = GC.AllocateUninitializedArray<double>(m * n);
            for (var i = 0; i < m; i++)
            {
                _work.AsSpan(i * m, n).CopyTo(rows.AsSpan(i * n));
            }

            _fronts.Add(new(unknown, n, rows));
            var rest = m - n;
            var (rests, counts, matrix) = (unknown[n..], new int[rest], GC.AllocateUninitializedArray<double>(rest * rest));
            for (var i = 0; i < rest; i++)
            {
                counts[i] = _seen[rests[i]];
                _work.AsSpan(((i + n) * m) + n, i + 1).CopyTo(matrix.AsSpan(i * rest));
            }

            foreach (var one in unknown)
            {
                _seen[one] = 0;
            }

            _left.Push(new(rests, counts, matrix));
        }

        /// <summary>A block of columns of L, below the diagonal in the matrix and whole in a line of its own.</summary>
        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        private void Columns(int first, int count, int m)
        {
            if (_columns.Length < Block * m)
            {
                _columns = new double[2 * Block * m];
            }

            Array.Clear(_columns, 0, Block * m);
            for (var k = first; k < first + count; k++)
            {
                var line = _columns.AsSpan((k - first) * m, m);
                line[k] = Math.Sqrt(_work[(k * m) + k]);
                for (var i = k + 1; i < m; i++)
                {
                    line[i] = _work[(i * m) + k] / line[k];
                }

                for (var i = k; i < m; i++)
                {
                    _work[(i * m) + k] = line[i];
                    for (var j = k + 1; j < first + count && j <= i; j++)
                    {
                        _work[(i * m) + j] -= line[i] * line[j];
                    }
                }
            }
        }

        /// <summary>Takes the products of the block off what lies right of it: four columns at once, so that each entry is fetched and stored once for four products.</summary>
        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        private void Subtract(int first, int count, int m)
        {
            ref var a = ref MemoryMarshal.GetArrayDataReference(_columns);
            ref var b = ref Unsafe.Add(ref a, m);
            ref var c = ref Unsafe.Add(ref b, m);
            ref var d = ref Unsafe.Add(ref c, m);
            for (var i = first + count; i < m; i++)
            {
                ref var row = ref _work[i * m];
                double ai = Unsafe.Add(ref a, i), bi = Unsafe.Add(ref b, i), ci = Unsafe.Add(ref c, i), di = Unsafe.Add(ref d, i);
                Vector256<double> av = Vector256.Create(ai), bv = Vector256.Create(bi), cv = Vector256.Create(ci), dv = Vector256.Create(di);
                var j = first + count;
                for (; j <= i - 3; j += 4)
                {
                    var sum = (av * Vector256.LoadUnsafe(ref a, (nuint)j)) + (bv * Vector256.LoadUnsafe(ref b, (nuint)j))
                        + ((cv * Vector256.LoadUnsafe(ref c, (nuint)j)) + (dv * Vector256.LoadUnsafe(ref d, (nuint)j)));
                    (Vector256.LoadUnsafe(ref row, (nuint)j) - sum).StoreUnsafe(ref row, (nuint)j);
                }

                for (; j <= i; j++)
                {
                    Unsafe.Add(ref row, j) -= (ai * Unsafe.Add(ref a, j)) + (bi * Unsafe.Add(ref b, j)) + ((ci * Unsafe.Add(ref c, j)) + (di * Unsafe.Add(ref d, j)));
                }
            }
        }
    }
}
