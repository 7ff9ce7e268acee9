using System.Runtime.CompilerServices;
using CsCheck;

namespace DetailGen.Testing;

/// <summary>
/// Laws on random input. The suite draws the same cases every time, from the name of the test, so that a failure speaks of the change under test and
/// not of luck; a long run (scripts/soak) draws new ones each time and shrinks what fails.
/// </summary>
public static class AlwaysLaws
{
    public static void Always<T>(this Gen<T> gen, Action<T> law, int cases = 200, Func<T, string>? print = null, [CallerMemberName] string test = "")
    {
        if (Soak.IsAsked)
        {
            gen.Sample(law, iter: Soak.Cases(cases), threads: 2, print: print);
            return;
        }

        Parallel.For(0, cases, new ParallelOptions { MaxDegreeOfParallelism = 2 }, index =>
        {
            var source = new PCG((uint)index, Seed(test));
            var state = source.ToString();
            var value = gen.Generate(source, null, out _);
            try
            {
                law(value);
            }
            catch (Exception fault)
            {
                throw new InvalidOperationException($"{test}, case {index} of {cases} (CsCheck_Seed={state}): {(print ?? Check.Print)(value)}\n{fault.Message}", fault);
            }
        });
    }

    public static void Always<T>(this Gen<T> gen, Func<T, bool> law, int cases = 200, Func<T, string>? print = null, [CallerMemberName] string test = "") =>
        gen.Always(value => Hold(law(value)), cases, print, test);

    public static void Always<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> law, int cases = 200, [CallerMemberName] string test = "") =>
        gen.Always(all => law(all.Item1, all.Item2), cases, null, test);

    public static void Always<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> law, int cases = 200, [CallerMemberName] string test = "") =>
        gen.Always(all => Hold(law(all.Item1, all.Item2)), cases, null, test);

    public static void Always<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> law, int cases = 200, [CallerMemberName] string test = "") =>
        gen.Always(all => law(all.Item1, all.Item2, all.Item3), cases, null, test);

    public static void Always<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> law, int cases = 200, [CallerMemberName] string test = "") =>
        gen.Always(all => Hold(law(all.Item1, all.Item2, all.Item3)), cases, null, test);

    public static void Always<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> law, int cases = 200, [CallerMemberName] string test = "") =>
        gen.Always(all => law(all.Item1, all.Item2, all.Item3, all.Item4), cases, null, test);

    public static void Always<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Func<T1, T2, T3, T4, bool> law, int cases = 200, [CallerMemberName] string test = "") =>
        gen.Always(all => Hold(law(all.Item1, all.Item2, all.Item3, all.Item4)), cases, null, test);

    public static void Always<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> gen, Action<T1, T2, T3, T4, T5> law, int cases = 200, [CallerMemberName] string test = "") =>
        gen.Always(all => law(all.Item1, all.Item2, all.Item3, all.Item4, all.Item5), cases, null, test);

    public static void Always<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> gen, Func<T1, T2, T3, T4, T5, bool> law, int cases = 200, [CallerMemberName] string test = "") =>
        gen.Always(all => Hold(law(all.Item1, all.Item2, all.Item3, all.Item4, all.Item5)), cases, null, test);

    private static void Hold(bool holds)
    {
        if (!holds)
        {
            throw new InvalidOperationException("The law does not hold.");
        }
    }

    // FNV-1a over UTF-16 units: string.GetHashCode differs from run to run.
    private static ulong Seed(string name)
    {
        var hash = 14_695_981_039_346_656_037UL;
        foreach (var letter in name)
        {
            hash = unchecked((hash ^ letter) * 1_099_511_628_211UL);
        }

        return hash;
    }
}
