package dev.stayfixed.obd;

/** The one failure of every parser in this package: keeps the whole input and the position at which it stopped making sense. */
public final class ObdFormatException extends RuntimeException {

    private final String input;
    private final int position;
    private final String message;

    /**
     * @param input the whole input as it was given
     * @param position zero-based index into {@code input} of the first thing that does not fit
     * @param found what stands there
     * @param expected what should stand there, with the accepted choices
     */
    public ObdFormatException(String input, int position, String found, String expected) {
        super(message(position, found, expected));
        this.message = message(position, found, expected);
        this.input = input;
        this.position = position;
    }

    private static String message(int position, String found, String expected) {
        return "at position " + position + ": found " + found + ", expected " + expected;
    }

    /** Never null: where, what was found and what was expected. */
    @Override
    public String getMessage() {
        return message;
    }

    public String input() {
        return input;
    }

    public int position() {
        return position;
    }
}
