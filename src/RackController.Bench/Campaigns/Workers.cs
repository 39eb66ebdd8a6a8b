using System.Runtime.ExceptionServices;

namespace RackController.Bench;

/// <summary>Does pieces of work on all cores.</summary>
internal static class Workers
{
    /// <summary>Has each of as many threads as there are cores take pieces until none is left.</summary>
    /// <param name="takeOne">Takes and does one piece; false when there is none.</param>
    public static void Run(Func<bool> takeOne)
    {
        ExceptionDispatchInfo? defect = null;
        void Work()
        {
            try
            {
                while (defect is null && takeOne())
                {
                    // The next one.
                }
            }
            catch (Exception thrown)
            {
                defect = ExceptionDispatchInfo.Capture(thrown);
            }
        }

        var threads = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new Thread(Work)).ToList();
        threads.ForEach(thread => thread.Start());
        threads.ForEach(thread => thread.Join());
        defect?.Throw();
    }
}
