package dev.stayfixed.web;

import dev.stayfixed.platform.TellingOnH2;

@TellingOnH2
class ScenariosOnH2Test extends ArguedScenarios {}
