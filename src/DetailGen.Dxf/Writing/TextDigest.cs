using System.Security.Cryptography;
using System.Text;

namespace DetailGen.Dxf.Writing;

/// <summary>The digest behind a long text: a letter changed in it is seen even where the length stays.</summary>
internal static class TextDigest
{
    /// <summary>Group code that it stands under; 300 to 309 are texts of any kind (DXF reference, group codes in numerical order; from memory).</summary>
    public const int Code = 300;

    public static string Of(string text) => ContentDigest.Algorithm + " " + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
