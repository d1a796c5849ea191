// A paper that must hold on one page, and the travel card, which is one.
#include "exchange/documents/one_page.hpp"

#include <filesystem>

#include "exchange/documents/pdf_file.hpp"
#include "exchange/documents/read_pdf.hpp"
#include "exchange/documents/travel_card.hpp"

namespace one_page_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

const std::string path =
    (std::filesystem::temp_directory_path() / "sparewell-one-page-test.pdf").string();

/// Writes the page and returns how many lines were left out.
int written(const OnePage& page, PaperSize paper = PaperSize::a4) {
  int left_out = 0;
  const auto pages = write_pdf(path, paper, "page", [&](PdfCanvas& canvas, int) {
    left_out = draw_one_page(canvas, page);
    canvas.next_page();
    return 1;
  });
  REQUIRE(pages);
  CHECK(pages_of(path) == 1);
  return left_out;
}

OnePage page_with(int lines, LetterSize letters) {
  PageSection section;
  section.heading = {"Parts", Pictogram::liner, true};
  section.letters = letters;
  section.left_out = "And {} more.";
  for (int i = 0; i < lines; ++i) {
    section.lines.push_back({fmt::format("line-{:03}", i), Pictogram::sock, false, 1});
  }
  OnePage page;
  page.rows = {{section}};
  page.cautions = {"Caution below."};
  return page;
}

}  // namespace

TEST_CASE("Letters shrink before anything is left out") {
  // 30 lines of 20 points take about 30 * 38 points with their pictures, more than an A4 page has;
  // at 10 points they take half of that.
  CHECK(written(page_with(30, {20, 10})) == 0);
  const auto text = words_in(path);
  CHECK(has(text, "line-029"));
  CHECK(has(text, "Caution below."));
  CHECK_FALSE(has(text, "more."));
}

TEST_CASE("What does not fit at the least size is left out from the end and counted") {
  for (const auto paper : {PaperSize::a4, PaperSize::letter}) {
    const int left_out = written(page_with(100, {20, 14}), paper);
    REQUIRE(left_out > 0);
    const auto text = words_in(path);
    CHECK(has(text, fmt::format("And {} more.", left_out)));
    CHECK(has(text, fmt::format("line-{:03}", 99 - left_out)));
    CHECK_FALSE(has(text, fmt::format("line-{:03}", 100 - left_out)));
    CHECK(has(text, "Caution below."));
  }
}

TEST_CASE("Of several sections the lines of the highest rank go first, those of rank 0 never") {
  auto page = page_with(60, {14, 14});
  auto first = page.rows[0][0];
  for (auto& line : first.lines) line.words = fmt::format("care-{}", line.words);
  for (auto& line : first.lines) line.rank = 2;
  auto stays = page_with(3, {14, 14}).rows[0][0];
  for (auto& line : stays.lines) line = {fmt::format("must-{}", line.words)};
  page.rows = {{first}, {page.rows[0][0]}, {stays}};
  CHECK(written(page) > 60);
  const auto text = words_in(path);
  CHECK_FALSE(has(text, "care-line"));
  CHECK(has(text, "And 60 more."));
  CHECK(has(text, "must-line-002"));
}

TEST_CASE("Even what must stay is made to fit") {
  auto page = page_with(200, {14, 14});
  for (auto& line : page.rows[0][0].lines) line.rank = 0;
  CHECK(written(page) == 0);
  CHECK(has(words_in(path), "line-199"));
}

TEST_CASE("A text without end is cut rather than pushing all others out") {
  auto page = page_with(5, {14, 14});
  std::string endless;
  for (int i = 0; i < 3000; ++i) endless += "words ";
  page.rows[0][0].lines[0].words = endless;
  CHECK(written(page) == 0);
  CHECK(has(words_in(path), "line-004"));
}

namespace {

TravelCard made_card(int parts) {
  TravelCard card;
  card.title = {Pictogram::suitcase, "Travel card", true};
  card.whose.lines = {{Pictogram::none, "Patient: P-0012   Ольга Řeháková", true},
                      {Pictogram::none, "Trip: 24 Dec 2026 to 7 Jan 2027"}};
  card.reacts.heading = {Pictogram::warning, "I react to"};
  card.reacts.lines = {{Pictogram::reacts, "nickel: itching; shown by a patch test", true}};
  card.pack.heading = {Pictogram::suitcase, "Pack"};
  for (int i = 0; i < parts; ++i) {
    card.pack.lines.push_back(
        {Pictogram::liner_with_pin,
         fmt::format("1 × locking liner, silicone, size 28, thread M10, left side, lot A{}", i)});
  }
  card.worn.emplace_back().heading = {Pictogram::none, "I wear now"};
  card.worn.back().lines = card.pack.lines;
  card.fails.heading = {Pictogram::warning, "If a part fails"};
  card.fails.lines = {{Pictogram::crutches, "Do not walk on."}};
  card.care.heading = {Pictogram::none, "Washing and skin"};
  card.care.lines = {{Pictogram::wash, "Wash by hand."}};
  card.clinic.heading = {Pictogram::none, "Clinic"};
  card.clinic.lines = {{Pictogram::clinic, "Harbour Limb Clinic"}, {Pictogram::none, "1 Quay"}};
  card.left_out = "{} more: ask the clinic.";
  card.cautions = {"It does not replace judgement."};
  return card;
}

}  // namespace

TEST_CASE("A travel card is one page for each language, on either paper") {
  for (const auto paper : {PaperSize::a4, PaperSize::letter}) {
    const auto pages = write_travel_cards({made_card(2), made_card(2)}, paper, path);
    REQUIRE(pages);
    CHECK(*pages == 2);
    CHECK(pages_of(path) == 2);
    for (const int page : {1, 2}) {
      const auto text = words_in(path, page, page);
      for (const std::string part :
           {"Ольга", "Řeháková", "24 Dec 2026", "nickel", "lot A1", "Do not walk on",
            "Wash by hand", "1 Quay", "does not replace judgement"}) {
        CAPTURE(part);
        CHECK(has(text, part));
      }
    }
  }
}

TEST_CASE("A full card keeps what matters most and counts the rest") {
  REQUIRE(write_travel_cards({made_card(40)}, PaperSize::letter, path));
  CHECK(pages_of(path) == 1);
  const auto text = words_in(path);
  CHECK(has(text, "nickel: itching"));
  CHECK(has(text, "more: ask the clinic."));
  CHECK(has(text, "does not replace judgement"));
  CHECK(has(text, "1 Quay"));
  std::filesystem::remove(path);
  CHECK_FALSE(write_travel_cards({made_card(1)}, PaperSize::a4, "/nosuch/folder/card.pdf"));
}

}  // namespace one_page_test
