package planted.web.pages;

import org.springframework.stereotype.Controller;

/** A page that keeps no rule of pages. */
@Controller
class UnruledPage {}
