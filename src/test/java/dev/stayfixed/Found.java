package dev.stayfixed;

import dev.stayfixed.drive.Finding;

/** A finding with its reason in English, as tests hold it. */
public record Found(Finding.Held held, String words) {

    public static Found found(Finding finding) {
        return new Found(finding.held(), English.words(finding.reason()));
    }

    public static Found yes(String words) {
        return new Found(Finding.Held.YES, words);
    }

    public static Found no(String words) {
        return new Found(Finding.Held.NO, words);
    }

    public static Found unknown(String words) {
        return new Found(Finding.Held.UNKNOWN, words);
    }
}
