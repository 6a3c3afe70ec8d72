using System.Collections.Generic;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Bundles;

/// <summary>The record in a bundle, with the bundle open as long as it is read.</summary>
internal sealed class BundleRecordReader : RecordReader
{
    private readonly BundleArchive _bundle;
    private readonly RecordReader _record;

    /// <summary>Opens the record.</summary>
    /// <param name="bundle">The bundle; closed with the reader, or at once when this fails.</param>
    /// <exception cref="RecordException">It has none.</exception>
    public BundleRecordReader(BundleArchive bundle)
        : this(bundle, RecordOf(bundle))
    {
    }

    private BundleRecordReader(BundleArchive bundle, RecordReader record)
        : base(record.Header)
    {
        _bundle = bundle;
        _record = record;
    }

    /// <inheritdoc/>
    public override double Part => _record.Part;

    /// <inheritdoc/>
    protected override IEnumerable<Sample> Rows()
    {
        foreach (Sample sample in _record.Samples()) yield return sample;
        Break = _record.Break;
    }

    /// <inheritdoc/>
    protected override void Free()
    {
        _record.Dispose();
        _bundle.Dispose();
    }

    private static RecordReader RecordOf(BundleArchive bundle)
    {
        try
        {
            return bundle.Record();
        }
        catch
        {
            bundle.Dispose();
            throw;
        }
    }
}
