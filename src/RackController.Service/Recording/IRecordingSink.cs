using RackController.Control;

namespace RackController.Service;

/// <summary>Takes pages of the record from the scan thread, at once and without waiting for anything.</summary>
internal interface IRecordingSink
{
    /// <summary>Takes a page.</summary>
    /// <param name="page">The page, which is the sink's to keep.</param>
    /// <returns>Whether there was room for it; otherwise it is lost, and the record has a gap.</returns>
    bool TryTake(PageBytes page);
}
