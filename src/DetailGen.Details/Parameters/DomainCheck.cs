using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Parameters;

/// <summary>Whether a value lies in a domain, and if not, the nearest that does.</summary>
public static class DomainCheck
{
    /// <returns>Null where it lies inside.</returns>
    public static Diagnostic? Fault(string key, Setting given, Domain domain, string text, Mark at)
    {
        Setting Of(long number) => Setting.Numeric(given.Unit, number);
        if (domain.Holds(given.Number))
        {
            return null;
        }

        if (given.Number < domain.From || given.Number > domain.To)
        {
            return Messages.OutsideDomain(at, key, given, Of(domain.From), Of(domain.To), text);
        }

        var below = given.Number - ((given.Number - domain.From) % domain.Step);
        var above = below + domain.Step <= domain.To ? below + domain.Step : below;
        return Messages.OffStep(at, key, given, Of(domain.Step), Of(below), Of(above), text);
    }
}
