#include "exchange/documents/travel_card.hpp"

#include "clinic/say.hpp"
#include "exchange/documents/one_page.hpp"
#include "exchange/documents/pdf_file.hpp"

namespace sparewell::exchange {
namespace {

/// What matters: never below 14 points, which is commonly called large print.
constexpr LetterSize large{18, 14};
constexpr LetterSize worn{18, 12};
constexpr LetterSize advice{14, 10};

// What is left out first when the card is full has the highest rank.
constexpr int sensitivities = 1;
constexpr int spares = 2;
constexpr int when_it_fails = 3;
constexpr int parts_worn = 4;
constexpr int washing = 5;

PageSection section_of(const PicturedSection& from, LetterSize letters, int rank,
                       const std::string& left_out) {
  PageSection made;
  made.heading = {from.heading.words, from.heading.picture, true};
  made.letters = letters;
  made.left_out = left_out;
  for (const auto& line : from.lines) {
    made.lines.push_back({line.words, line.picture, line.bold, rank});
  }
  return made;
}

PageSection head_of(const TravelCard& card) {
  PageSection made;
  made.heading = {card.title.words, card.title.picture, true};
  made.letters = {22, 18};
  made.share = 0.7;
  return made;
}

OnePage page_of(const TravelCard& card) {
  OnePage page;
  std::vector<PageSection> both_sides;
  for (const auto& side : card.worn) {
    both_sides.push_back(section_of(side, worn, parts_worn, card.left_out));
  }
  std::vector<PageSection> clinic;
  for (const auto& line : card.clinic.lines) {
    PicturedSection alone;
    alone.lines = {line};
    clinic.push_back(section_of(alone, large, 0, ""));
    clinic.back().share = clinic.size() == 1 ? 2.2 : 1;
  }
  auto reacts = section_of(card.reacts, large, sensitivities, card.left_out);
  reacts.framed = true;
  page.rows = {{head_of(card), section_of(card.whose, large, 0, "")},
               {std::move(reacts)},
               {section_of(card.pack, large, spares, card.left_out)},
               std::move(both_sides),
               {section_of(card.fails, large, when_it_fails, card.left_out)},
               {section_of(card.care, advice, washing, card.left_out)},
               std::move(clinic)};
  page.cautions = card.cautions;
  return page;
}

}  // namespace

Expected<int> write_travel_cards(const std::vector<TravelCard>& cards, PaperSize paper,
                                 const std::string& path) {
  return write_pdf(path, paper, said("travel card"), [&](PdfCanvas& canvas, int) {
    for (const auto& card : cards) {
      (void)draw_one_page(canvas, page_of(card));
      canvas.next_page();
    }
    return static_cast<int>(cards.size());
  });
}

}  // namespace sparewell::exchange
