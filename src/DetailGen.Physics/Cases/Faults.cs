namespace DetailGen.Physics.Cases;

/// <summary>Something wrong with a case file.</summary>
/// <param name="Line">From 1; 0 where the whole file is meant.</param>
/// <param name="Case">Id of the case; null outside any.</param>
public sealed record CaseFault(string File, int Line, int Column, string? Case, string? Key, string? Value, string Reason, string? Hint);

/// <summary>A sentence about what is wrong, and what to write instead.</summary>
internal readonly record struct Complaint(string Reason, string Hint);

/// <summary>Gathers the faults of one file, so that all are told at once.</summary>
internal sealed class Faults(string file)
{
    private readonly List<CaseFault> _all = [];
    private readonly HashSet<CaseFault> _known = [];

    /// <summary>The case that is being read.</summary>
    internal string? Case { get; set; }

    /// <summary>In the order of the file.</summary>
    internal IReadOnlyList<CaseFault> All => [.. _all.OrderBy(fault => fault.Line).ThenBy(fault => fault.Column)];

    internal int Count => _all.Count;

    /// <summary>A fault that was told is not told again: some keys are read twice.</summary>
    internal void Add(int line, int column, string? key, string? value, Complaint complaint)
    {
        var fault = new CaseFault(file, line, column, Case, key, value, complaint.Reason, complaint.Hint);
        if (_known.Add(fault))
        {
            _all.Add(fault);
        }
    }

    internal void Add(Written at, string? key, Complaint complaint) => Add(at.Line, at.Column, key, at is Written.Map or Written.List ? null : at.Shown, complaint);
}
