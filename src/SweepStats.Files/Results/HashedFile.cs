using System.Security.Cryptography;

namespace SweepStats.Files.Results;

/// <summary>A new file whose hash is known once it is closed: nothing that was just written has to be read again.</summary>
/// <param name="file">Where it is created.</param>
/// <param name="closed">Told the SHA-256 of what was written, in lower-case hexadecimal.</param>
internal sealed class HashedFile(string file, Action<string> closed) : Stream
{
    private readonly FileStream _to = File.Create(file);
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private bool _open = true;

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => _open;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        _to.Write(buffer);
        _hash.AppendData(buffer);
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Flush() => _to.Flush();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing && _open)
        {
            _open = false;
            _to.Dispose();
            closed(Convert.ToHexStringLower(_hash.GetHashAndReset()));
            _hash.Dispose();
        }

        base.Dispose(disposing);
    }
}
