using RackController.Control;
using RackController.Model;

namespace RackController.Service;

/// <summary>Joins the recorder of what Control is told to whoever keeps it.</summary>
/// <param name="recorder">Puts scans on record.</param>
/// <param name="sink">Keeps the record.</param>
internal sealed class ScanRecording(ScanRecorder recorder, IRecordingSink sink)
{
    /// <inheritdoc cref="ScanRecorder.Note"/>
    public void Note(
        in Moment now, Readings readings, in ScanConditions conditions, ReadOnlySpan<OperatorRequest> requests,
        RelayCommands commands, ReadOnlySpan<ControlEvent> events)
    {
        recorder.Note(now, readings, conditions, requests, commands, events);
        if (recorder.IsPageDue && !sink.TryTake(recorder.TakePage()))
        {
            recorder.LosePage();
        }
    }
}
