package dev.stayfixed.web.pages;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.stereotype.Controller;

/** A page of the shop: it has the shop's words and units, the headers and form tokens of {@link PageRules}, and errors for people. */
@Controller
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
public @interface TechnicianPage {}
