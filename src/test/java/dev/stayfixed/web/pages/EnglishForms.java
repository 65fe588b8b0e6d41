package dev.stayfixed.web.pages;

import dev.stayfixed.platform.EnglishTexts;
import jakarta.validation.Validation;

/** Forms read without a running service. */
public final class EnglishForms {

    public static final FormReader READER =
            new FormReader(Validation.buildDefaultValidatorFactory().getValidator(), EnglishTexts.all());

    private EnglishForms() {}
}
