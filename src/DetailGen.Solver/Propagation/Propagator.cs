namespace DetailGen.Solver.Propagation;

/// <summary>Narrows bounds until what it stands for holds; complete once all its variables are fixed.</summary>
internal abstract class Propagator
{
    /// <summary>Its place in the problem.</summary>
    public int Index { get; set; }

    /// <summary>The tag it stands under; -1 where it cannot be given up.</summary>
    public int Tag { get; init; } = -1;

    /// <summary>Narrows; false where it cannot hold (the state then knows the reason).</summary>
    public abstract bool Propagate(State state);

    /// <summary>Says which bounds wake it.</summary>
    public abstract void Watch(Watchers watchers);

    /// <summary>Joins the variables that it lets stand in each other's way; none where it holds whatever they be, or only says what others imply.</summary>
    public virtual void Couple(State state, Coupling coupling)
    {
    }

    /// <summary>Raises the cost that it bounds, where it bounds one, to what the other values ask.</summary>
    public virtual void RaiseCost(long[] values)
    {
    }

    /// <summary>Marks the bounds it used to move this bound, or to fail (variable -1).</summary>
    /// <param name="isLow">True where it moved the lower bound; of no account where it failed.</param>
    public abstract void Explain(int variable, bool isLow, Needed needed);
}
