package dev.stayfixed.reports.api;

import java.io.ByteArrayInputStream;
import java.util.List;
import org.verapdf.core.EncryptedPdfException;
import org.verapdf.core.ModelParsingException;
import org.verapdf.core.ValidationException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Holds a file against ISO 19005 (PDF/A) and ISO 14289 (PDF/UA) with veraPDF. */
final class PdfStandards {

    static {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private PdfStandards() {}

    /** Clauses that the file breaks, each with a place. */
    static List<String> broken(byte[] pdf, PDFAFlavour flavour)
            throws ModelParsingException, EncryptedPdfException, ValidationException {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            ValidationResult result = validator.validate(parser);
            List<String> broken = result.getTestAssertions().stream()
                    .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED)
                    .map(assertion -> assertion.getRuleId().getClause() + "-"
                            + assertion.getRuleId().getTestNumber() + " " + assertion.getMessage() + " at "
                            + assertion.getLocation().getContext())
                    .toList();
            return result.isCompliant() ? List.of() : broken;
        } catch (java.io.IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
