using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Presets;

/// <summary>Which keys this detail has, which only others have, and which none has.</summary>
/// <param name="own">Of this detail; fewer than three where one could not be found.</param>
/// <param name="complete">All three were found, so that a key can be said to be missing.</param>
internal sealed class DetailKeys(IReadOnlyList<Component> own, Components all, bool complete, PresetLayers layers)
{
    public IReadOnlyList<Component> Own => own;

    public bool IsHere(Parameter parameter) => own.Any(component => component.Parameters.Contains(parameter));

    public bool IsFromBase(Mark at) => layers.IsFromBase(at);

    /// <summary>The parameter to read a value by; null where there is none, with a fault unless it may be passed over.</summary>
    public Parameter? Parameter(Entry entry, string group, List<Diagnostic> faults)
    {
        if (Parameter(own, entry.Key) is { } here)
        {
            return here;
        }

        if (own.SelectMany(component => component.Derived).Any(derived => derived.Key == entry.Key))
        {
            faults.Add(Messages.DerivedKey(entry.KeyAt, entry.Key));
            return null;
        }

        var elsewhere = Parameter(all.All, entry.Key);
        if (elsewhere is null)
        {
            faults.Add(Messages.UnknownKey(entry.KeyAt, entry.Key, group, [.. (complete ? own : all.All).SelectMany(component => component.Parameters).Select(parameter => parameter.Key).Distinct(StringComparer.Ordinal)]));
            return null;
        }

        if (!complete)
        {
            return elsewhere;
        }

        if (!layers.IsFromBase(entry.KeyAt))
        {
            faults.Add(Messages.KeyNotHere(entry.KeyAt, entry.Key, [.. own.Select(component => component.Id)]));
            return null;
        }

        return elsewhere; // its unit is still looked at
    }

    /// <summary>The slot of that key; null where there is none, with a fault unless it may be passed over.</summary>
    public Slot? Slot(Entry entry, List<Diagnostic> faults)
    {
        if (Slot(own, entry.Key) is { } here)
        {
            return here;
        }

        var elsewhere = Slot(all.All, entry.Key);
        if (elsewhere is null)
        {
            faults.Add(Messages.UnknownKey(entry.KeyAt, entry.Key, "materials", [.. (complete ? own : all.All).SelectMany(component => component.Slots).Select(slot => slot.Key).Distinct(StringComparer.Ordinal)]));
            return null;
        }

        if (complete && !layers.IsFromBase(entry.KeyAt))
        {
            faults.Add(Messages.KeyNotHere(entry.KeyAt, entry.Key, [.. own.Select(component => component.Id)]));
            return null;
        }

        return elsewhere;
    }

    private static Parameter? Parameter(IReadOnlyList<Component> components, string key) =>
        components.SelectMany(component => component.Parameters).FirstOrDefault(parameter => parameter.Key == key);

    private static Slot? Slot(IReadOnlyList<Component> components, string key) =>
        components.SelectMany(component => component.Slots).FirstOrDefault(slot => slot.Key == key);
}
