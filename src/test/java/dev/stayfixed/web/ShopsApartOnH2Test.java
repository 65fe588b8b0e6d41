package dev.stayfixed.web;

import dev.stayfixed.platform.OnH2;
import dev.stayfixed.platform.ShopByHeader;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.TestPropertySource;

@OnH2
@Import(ShopByHeader.class)
@TestPropertySource(properties = {"stayfixed.webhooks.private-targets=true", "stayfixed.background=false"})
class ShopsApartOnH2Test extends ShopsApart {}
