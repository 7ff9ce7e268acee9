namespace DetailGen.Physics.Fields;

/// <summary>Quadratic functions on one triangle: their values at its corners, then at the middles of the sides opposite these.</summary>
internal readonly struct Shape
{
    /// <summary>∫ of the squares and products along a side over its length, times 30: at its two ends, then at its middle.</summary>
    internal static readonly double[,] Mass = { { 4, -1, 2 }, { -1, 4, 2 }, { 2, 2, 16 } };

    /// <summary>∫ of the products of slopes along a side times its length and 3, in the same order.</summary>
    internal static readonly double[,] Bend = { { 7, 1, -8 }, { 1, 7, -8 }, { -8, -8, 16 } };

    private readonly double _ax, _ay, _bx, _by, _cx, _cy; // gradients of the three shares in 1/mm

    internal Shape(Mesh mesh, int triangle)
    {
        var t = mesh.Triangles[triangle];
        var (a, b, c) = (mesh.Places[t.A], mesh.Places[t.B], mesh.Places[t.C]);
        var twice = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        Area = twice / 2;
        (_ax, _ay, _bx, _by) = ((b.Y - c.Y) / twice, (c.X - b.X) / twice, (c.Y - a.Y) / twice, (a.X - c.X) / twice);
        (_cx, _cy) = ((a.Y - b.Y) / twice, (b.X - a.X) / twice);
    }

    /// <summary>mm².</summary>
    internal double Area { get; }

    /// <summary>Gradient of the share of a corner, in 1/mm.</summary>
    internal (double X, double Y) Share(int corner) => corner switch { 0 => (_ax, _ay), 1 => (_bx, _by), _ => (_cx, _cy) };

    /// <summary>∫ k ∇·∇ of the six functions with each other, row by row.</summary>
    internal void Stiffness(double k, Span<double> matrix)
    {
        matrix.Clear();
        var whole = k * Area;
        double ab = whole * ((_ax * _bx) + (_ay * _by)), bc = whole * ((_bx * _cx) + (_by * _cy)), ca = whole * ((_cx * _ax) + (_cy * _ay));
        Span<double> own = [-ab - ca, -ab - bc, -bc - ca]; // a corner with itself
        Span<double> pair = [bc, ca, ab]; // the two other corners with each other
        for (var i = 0; i < 3; i++)
        {
            matrix[7 * i] = own[i];
            matrix[7 * (3 + i)] = 8.0 / 3 * (own[(i + 1) % 3] + own[(i + 2) % 3] + pair[i]);
            for (var j = 0; j < 3; j++)
            {
                if (j == i)
                {
                    continue;
                }

                var third = 3 - i - j;
                matrix[(6 * i) + j] = -pair[third] / 3;
                matrix[(6 * i) + 3 + j] = matrix[(6 * (3 + j)) + i] = 4.0 / 3 * pair[j]; // the middle opposite j ends at i
                matrix[(6 * (3 + i)) + 3 + j] = 8.0 / 3 * pair[third];
            }
        }
    }

    /// <summary>Gradient of the function with these six values, in 1/mm, at the middle of the side opposite a corner.</summary>
    internal (double X, double Y) Slope(ReadOnlySpan<double> values, int opposite)
    {
        double x = 0, y = 0;
        for (var i = 0; i < 3; i++)
        {
            int j = (i + 1) % 3, k = (i + 2) % 3;
            var corner = i == opposite ? -1 : 1;
            // the middle opposite i is 4·share(j)·share(k)
            double shareJ = j == opposite ? 0 : 0.5, shareK = k == opposite ? 0 : 0.5;
            var ((ix, iy), (jx, jy), (kx, ky)) = (Share(i), Share(j), Share(k));
            x += (values[i] * corner * ix) + (values[3 + i] * 4 * ((shareJ * kx) + (shareK * jx)));
            y += (values[i] * corner * iy) + (values[3 + i] * 4 * ((shareJ * ky) + (shareK * jy)));
        }

        return (x, y);
    }
}
