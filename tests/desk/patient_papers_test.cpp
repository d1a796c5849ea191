// The travel card and the parts list, written from records and read by another program.
#include <filesystem>

#include "desk/papers/parts_list.hpp"
#include "desk/papers/travel_card.hpp"
#include "desk/sample_day.hpp"
#include "exchange/documents/read_pdf.hpp"

namespace patient_papers_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const std::string path =
    (std::filesystem::temp_directory_path() / "sparewell-patient-papers-test.pdf").string();

/// P-1 wears a pin suspension on the left, without a recorded lock.
Assessment assessment_with_prosthesis() {
  auto made = test_assessment();
  Prosthesis prosthesis;
  prosthesis.patient = {"P-1"};
  prosthesis.level = Level::transtibial;
  prosthesis.delivered_on = test_today - days{400};
  made.clinic.prostheses = {prosthesis};
  made.clinic.sensitivities = {{{"P-1"}, "nickel", "itching", "patch test", std::nullopt}};
  made.clinic.settings.name = "Harbour Limb Clinic";
  made.clinic.settings.ship_to = "1 Quay\nPort Sample";
  return made;
}

TravelCheck check_with_spare() {
  TravelCheck check;
  check.request.patient = "P-1";
  check.request.departure = make_date(2026, 12, 24);
  check.request.back = make_date(2027, 1, 7);
  check.request.delay_days = 3;
  check.last_day = make_date(2027, 1, 10);
  check.unknown = {{Side::left, care::Function::lock}};
  TravelPart part;
  part.item = {"B-28"};
  part.spares = 2;
  part.take = {{{{"B-28"}, "LOT-Z", make_date(2028, 3, 3)}, "main store", 1}};
  part.to_order = 1;
  check.parts = {part};
  return check;
}

std::string card_of(const TravelCheck& check, const PatientPaper& how = {}) {
  const auto pages =
      print_travel_card(assessment_with_prosthesis().clinic, check, how, test_today, path);
  REQUIRE(pages);
  return words_in(path);
}

void check_has(const std::string& text, const std::vector<std::string>& parts) {
  for (const auto& part : parts) {
    CAPTURE(part);
    CHECK(has(text, part));
  }
}

}  // namespace

TEST_CASE("The card says what to pack, what is worn, what is not tolerated and what is not known") {
  check_has(card_of(check_with_spare()),
            {"P-1", "Ana Fieldmouse", "Trip: 24 Dec 2026 to 7 Jan 2027", "until 10 Jan 2027",
             "I react to", "nickel: itching; shown by a patch test",
             "1 × locking liner, silicone, size 28 (left), lot LOT-Z", "(left) (still to get)",
             "transtibial (below-knee) prosthesis, held by a pin", "Left side: what I wear now",
             "Needed but not recorded: shuttle lock", "talk to the clinic before leaving",
             "do not walk on", "Harbour Limb Clinic", "Port Sample", "Telephone",
             "does not replace the judgement", "Written on 25 Nov 2026",
             "ask the clinic before you follow it"});
}

TEST_CASE("The same card in Spanish, with its cautions, and without the name") {
  PatientPaper how;
  how.languages = {"es"};
  how.names = false;
  const auto text = card_of(check_with_spare(), how);
  check_has(text, {"Tarjeta de viaje", "Paciente: P-1", "del 24 dic 2026 al 7 ene 2027",
                   "Me producen reacción", "nickel (níquel): itching (picor)",
                   "liner con anclaje, silicona, talla 28 (izq.), lote LOT-Z",
                   "no sustituye el criterio", "pregunte a la clínica", "Escrito el 25 nov 2026"});
  CHECK_FALSE(has(text, "Fieldmouse"));
}

TEST_CASE(
    "Two languages are two pages of one file, and an unknown one is refused with the choice") {
  PatientPaper how;
  how.languages = {"en", "es", "en"};
  how.paper = exchange::PaperSize::letter;
  (void)card_of(check_with_spare(), how);
  CHECK(pages_of(path) == 2);
  CHECK(has(words_in(path, 1, 1), "Travel card"));
  CHECK(has(words_in(path, 2, 2), "Tarjeta de viaje"));
  how.languages = {"xx"};
  const auto refused = print_travel_card(assessment_with_prosthesis().clinic, check_with_spare(),
                                         how, test_today, path);
  REQUIRE_FALSE(refused);
  CHECK(has(refused.error().sentence, "name one of: en, es"));
}

TEST_CASE("A spare that a check stops is not simply packed") {
  auto check = check_with_spare();
  check.parts[0].stops = {{"conflict", care::Gravity::stops, true, "Conflict."}};
  const auto text = card_of(check);
  CHECK(has(text, "Only if the clinic agrees, because a check speaks against it: 2 × locking"));
  CHECK_FALSE(has(text, "LOT-Z"));
}

TEST_CASE("A patient of whom nothing is recorded gets a card that says so") {
  auto check = check_with_spare();
  check.request.patient = "P-2";
  check.parts.clear();
  check.unknown.clear();
  auto clinic = assessment_with_prosthesis().clinic;
  clinic.units.clear();
  clinic.settings.ship_to.clear();
  REQUIRE(print_travel_card(clinic, check, {}, test_today, path));
  check_has(words_in(path), {"That does not mean there is none", "asks for no spare",
                             "No part in use is recorded", "The address is not recorded"});
}

TEST_CASE("Forty parts and long names are still one page for each language") {
  auto assessment = assessment_with_prosthesis();
  auto& clinic = assessment.clinic;
  for (int i = 0; i < 40; ++i) {
    clinic.units.push_back(test_unit("P-1", Side::right, "C-28", fmt::format("Q{}", i), i));
  }
  clinic.patients[0].given_name = std::string(120, 'W');
  clinic.settings.ship_to = "A long street\nA long town\nA long county\nA long land\nCode 12345";
  for (const auto* substance : {"mineral oil", "thiurams", "lanolin", "latex", "perfume"}) {
    clinic.sensitivities.push_back({{"P-1"}, substance, "contact dermatitis", "observed", {}});
  }
  for (const auto paper : {exchange::PaperSize::a4, exchange::PaperSize::letter}) {
    PatientPaper how{{"en", "es"}, paper, true};
    REQUIRE(print_travel_card(clinic, check_with_spare(), how, test_today, path));
    CHECK(pages_of(path) == 2);
    check_has(words_in(path, 1, 1),
              {"perfume", "more, for which there was no room", "does not replace the judgement"});
    check_has(words_in(path, 2, 2),
              {"perfume", "más, que ya no caben", "no sustituye el criterio"});
  }
}

TEST_CASE("The parts list gives spans, never a bare day, with care and cautions") {
  const Day day{assessment_with_prosthesis()};
  PatientPaper how{{"en", "es"}, exchange::PaperSize::a4, true};
  const auto pages = print_parts_list(day, {"P-1"}, how, path);
  REQUIRE(pages);
  CHECK(pages_of(path) == *pages);
  const auto* forecast = day.forecast(1);
  REQUIRE(forecast);
  const auto text = words_in(path);
  check_has(text, {"Left side", "Right side", "Locking liner, silicone, size 28", "lot LOT-S2",
                   "In use since 29 Jan 2026.",
                   fmt::format("Ask for a new one between {} and {}.",
                               paper_language("en")->date(*forecast->p10),
                               paper_language("en")->date(*forecast->p50)),
                   "one in ten is worn out", "Care: liner, silicone", "Wash the inside",
                   "No cream, oil or powder", "do not walk on", "does not replace the judgement",
                   "Lado izquierdo", "Pida una nueva entre el", "Lave el interior",
                   "no sustituye el criterio", "nickel (níquel)"});
  CHECK_FALSE(has(text, "LOT-S3"));  // ended
}

TEST_CASE("Parts alike are one line with their number; no part at all is said as it is") {
  auto assessment = assessment_with_prosthesis();
  assessment.clinic.units = {test_unit("P-1", Side::left, "B-28", "S2", 300),
                             test_unit("P-1", Side::left, "B-28", "S9", 300)};
  assessment.clinic.units[1].lot = assessment.clinic.units[0].lot;
  assessment.lives.clear();
  const Day day{std::move(assessment)};
  REQUIRE(print_parts_list(day, {"P-1"}, {}, path));
  check_has(words_in(path), {"2 × Locking liner", "serial numbers S2, S9",
                             "How long it will last is not known: ask the clinic."});
  REQUIRE(print_parts_list(day, {"P-2"}, {}, path));
  check_has(words_in(path), {"No part in use is recorded. That does not mean"});
  const auto refused = print_parts_list(day, {"P-9"}, {}, path);
  REQUIRE_FALSE(refused);
  CHECK(has(refused.error().sentence, "There is no patient 'P-9'"));
  std::filesystem::remove(path);
}

}  // namespace patient_papers_test
