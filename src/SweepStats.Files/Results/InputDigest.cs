using System.Security.Cryptography;
using System.Text;
using SweepStats.Files.Campaigns;

namespace SweepStats.Files.Results;

/// <summary>One hash over all input files, so that a signed page names exactly the files it rests on.</summary>
public static class InputDigest
{
    /// <summary>SHA-256 over the files' hashes, in lower-case hexadecimal.</summary>
    /// <param name="inputs">The files, in the order of summary.json.</param>
    /// <remarks>
    /// A file is one line, hash, two blanks, path: what <c>sha256sum</c> prints, so that anybody can work it out again.
    /// </remarks>
    public static string Of(ImmutableArray<InputFile> inputs)
    {
        string lines = string.Concat(inputs.Select(i => $"{i.Sha256}  {i.Path}\n"));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(lines)));
    }
}
