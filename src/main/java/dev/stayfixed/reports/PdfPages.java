package dev.stayfixed.reports;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/** Templates rendered as PDF/A-2a (ISO 19005-2) that is also PDF/UA-1 (ISO 14289-1): tagged, every font embedded, nothing fetched. */
@Component
public class PdfPages {

    /** sRGB, as the Java runtime ships it. */
    private static final byte[] SRGB =
            ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();

    private final ITemplateEngine templates;

    PdfPages(ITemplateEngine templates) {
        this.templates = templates;
    }

    /**
     * Renders a template, which must be well-formed XML with a title and a language.
     *
     * @param properties entries of the document information of our own
     * @param time written into the file as its time of creation, so that the same content gives the same bytes
     */
    public byte[] render(String template, Map<String, Object> content, Map<String, String> properties, Instant time) {
        String html = templates.process(template, new Context(LocaleContextHolder.getLocale(), content));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PdfBoxRenderer renderer = builder(html).buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
            PDDocument document = renderer.getPdfDocument();
            properties.forEach(document.getDocumentInformation()::setCustomMetadataValue);
            PdfTime.set(document, time);
            document.setDocumentId(time.toEpochMilli());
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static PdfRendererBuilder builder(String html) {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePdfUaAccessibility(true);
        builder.usePdfAConformance(PdfRendererBuilder.PdfAConformance.PDFA_2_A);
        builder.useColorProfile(SRGB);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.withProducer("Stayfixed");
        builder.useExternalResourceAccessControl(
                (uri, type) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
        font(builder, "LiberationSans-Regular", "Liberation Sans", 400, FontStyle.NORMAL);
        font(builder, "LiberationSans-Bold", "Liberation Sans", 700, FontStyle.NORMAL);
        font(builder, "LiberationMono-Regular", "Liberation Mono", 400, FontStyle.NORMAL);
        builder.withHtmlContent(html, null);
        builder.toStream(new ByteArrayOutputStream());
        return builder;
    }

    private static void font(PdfRendererBuilder builder, String file, String family, int weight, FontStyle style) {
        builder.useFont(() -> open("liberation/" + file + ".ttf"), family, weight, style, true);
    }

    private static InputStream open(String file) {
        try {
            return new ClassPathResource(file).getInputStream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
