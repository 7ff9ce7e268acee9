using DetailGen.Details.Reading;

namespace DetailGen.Details;

/// <summary>A value, or all the reasons why there is none.</summary>
public sealed class Outcome<T>
{
    private readonly T? _value;

    internal Outcome(T? value, IReadOnlyList<Diagnostic> faults)
    {
        _value = value;
        Faults = faults;
    }

    /// <summary>Empty where there is a value.</summary>
    public IReadOnlyList<Diagnostic> Faults { get; }

    public bool IsGood => Faults.Count == 0;

    /// <exception cref="InvalidOperationException">There is none; the faults say why.</exception>
    public T Value => IsGood ? _value! : throw new InvalidOperationException($"No value: {Faults[0].Reason}");

    public Outcome<TNext> Select<TNext>(Func<T, TNext> next) => IsGood ? Outcome.Good(next(_value!)) : Outcome.Bad<TNext>(Faults);

    public Outcome<TNext> SelectMany<TNext>(Func<T, Outcome<TNext>> next) => IsGood ? next(_value!) : Outcome.Bad<TNext>(Faults);

    public Outcome<TLast> SelectMany<TNext, TLast>(Func<T, Outcome<TNext>> next, Func<T, TNext, TLast> join) =>
        SelectMany(value => next(value).Select(second => join(value, second)));
}

/// <summary>Makes outcomes.</summary>
public static class Outcome
{
    public static Outcome<T> Good<T>(T value) => new(value, []);

    /// <exception cref="ArgumentException">No fault is given.</exception>
    public static Outcome<T> Bad<T>(params IReadOnlyList<Diagnostic> faults) =>
        faults.Count > 0 ? new(default, faults) : throw new ArgumentException("A refusal needs a reason.", nameof(faults));
}
