package dev.stayfixed.drive.signal;

/**
 * How a log's rows lie in time; all times in ms.
 *
 * @param wall from the first row to the last
 * @param counted without the gaps
 * @param gaps steps between two rows that are longer than {@link Timeline#LONGEST_STEP}
 * @param longestStep the longest that still counts
 * @param nonIncreasing rows whose time was not later than that of the row before
 * @param farthestBackward by how much a row's clock stood behind, at most
 */
public record RowTimes(
        long rows,
        long wall,
        long counted,
        long gaps,
        long gapTime,
        long longestGap,
        long longestStep,
        long nonIncreasing,
        long farthestBackward) {

    static final RowTimes NONE = new RowTimes(0, 0, 0, 0, 0, 0, 0, 0, 0);

    RowTimes with(Timeline.Step step) {
        long length = step.length();
        boolean gap = step.isGap();
        return new RowTimes(
                rows + 1,
                wall + length,
                counted + (gap ? 0 : length),
                gaps + (gap ? 1 : 0),
                gapTime + (gap ? length : 0),
                gap ? Math.max(longestGap, length) : longestGap,
                gap ? longestStep : Math.max(longestStep, length),
                nonIncreasing + (step.isNonIncreasing() ? 1 : 0),
                Math.max(farthestBackward, step.backward()));
    }
}
