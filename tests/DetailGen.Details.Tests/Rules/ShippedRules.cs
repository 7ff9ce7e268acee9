using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Solving;

namespace DetailGen.Details.Tests.Rules;

/// <summary>All shipped rule packs over all shipped components.</summary>
internal static class ShippedRules
{
    public static readonly Components Components = Components.Load();

    public static readonly MaterialLibrary Materials = MaterialLibrary.Load();

    public static readonly Catalogue Catalogue = Read();

    private static Catalogue Read()
    {
        var read = Catalogue.Of(Components.All, StockLibrary.Load().All, Materials.Ids, [.. Shelf.Shipped.Folders("presets/rules/").Select(Trial.PackOf)]);
        return read.IsGood ? read.Value : throw new InvalidOperationException(string.Join("\n", read.Faults.Select(fault => $"{fault.At}: {fault.Reason} {fault.Hint}")));
    }
}
