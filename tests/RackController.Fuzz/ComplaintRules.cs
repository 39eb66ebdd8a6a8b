using RackController.RackFile;

namespace RackController.Fuzz;

/// <summary>What a person may expect of every complaint: it names the place, and it is one line with a next step.</summary>
internal static class ComplaintRules
{
    /// <summary>Holds an answer to them.</summary>
    /// <param name="complaints">What was complained of.</param>
    /// <param name="isUsable">Whether the file can be used all the same.</param>
    /// <exception cref="DefectException">One of them is broken.</exception>
    public static void Hold(IEnumerable<Complaint> complaints, bool isUsable)
    {
        var hasError = false;
        foreach (var complaint in complaints)
        {
            hasError |= complaint.Severity == Severity.Error;
            if (complaint.Line < 1 || complaint.Column < 1)
            {
                throw new DefectException($"no place: {complaint}");
            }

            HoldOneLine(complaint.What);
            HoldOneLine(complaint.WhatToDo);
        }

        if (hasError == isUsable)
        {
            throw new DefectException(isUsable ? "usable, and an error" : "neither usable nor an error");
        }
    }

    /// <summary>Holds words for people to one line.</summary>
    /// <param name="words">The words.</param>
    /// <exception cref="DefectException">They are none, or more.</exception>
    public static void HoldOneLine(string words)
    {
        if (words.Length == 0 || words.Any(char.IsControl))
        {
            throw new DefectException($"not one line: {words}");
        }
    }
}
