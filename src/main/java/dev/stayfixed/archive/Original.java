package dev.stayfixed.archive;

/**
 * A submission exactly as it came; every body is UTF-8, so the text is the bytes.
 *
 * @param contentType the media type without parameters
 */
public record Original(String contentType, String text) {

    public static final String JSON = "application/json";
    public static final String PLAIN = "text/plain";
}
