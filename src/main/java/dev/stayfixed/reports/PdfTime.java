package dev.stayfixed.reports;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/** The time of creation of a PDF, which stands in two places that must agree: the document information and the XMP metadata. */
final class PdfTime {

    private PdfTime() {}

    static void set(PDDocument document, Instant time) throws IOException {
        Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        calendar.setTimeInMillis(time.getEpochSecond() * 1000);
        document.getDocumentInformation().setCreationDate(calendar);
        document.getDocumentInformation().setModificationDate(calendar);
        PDMetadata metadata = document.getDocumentCatalog().getMetadata();
        String xmp = new String(metadata.toByteArray(), StandardCharsets.UTF_8);
        String whole = Instant.ofEpochSecond(time.getEpochSecond()).toString().replace("Z", "+00:00");
        metadata.importXMPMetadata(xmp.replaceAll("(<xmp:(?:Create|Modify|Metadata)Date>)[^<]*", "$1" + whole)
                .getBytes(StandardCharsets.UTF_8));
    }
}
