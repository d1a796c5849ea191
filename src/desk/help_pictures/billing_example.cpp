#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/help_pictures/diagram.hpp"
#include "desk/help_pictures/examples.hpp"
#include "desk/picture/draw.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

/// What stands in one book, what in the other, and what follows.
struct BookPair {
  WordBox handed_out;
  WordBox billed;
  SignForm sign = SignForm::check;
  Line line = Line::solid;
  std::string verdict;
  [[nodiscard]] bool agrees() const { return sign == SignForm::check; }
};

WordBox empty_side(const char* words) {
  return {"", words, {}, true};
}

std::vector<BookPair> book_pairs() {
  const auto count = [](int number) { return static_cast<unsigned long>(number); };
  const auto on = [](unsigned day) { return short_date_words(make_date(2026, 11, day)); };
  const auto handed = [&](const char* item, const char* patient, int pieces, unsigned day) {
    return WordBox{fmt::format("{}, {}", item, patient),
                   say_n("{} piece, {}", "{} pieces, {}", count(pieces), pieces, on(day))};
  };
  const auto billed = [&](const char* code, const char* claim, int units, unsigned day) {
    return WordBox{say("Claim {}", claim), say_n("{}: {} unit, {}", "{}: {} units, {}",
                                                 count(units), code, units, on(day))};
  };
  return {{handed("LN01-26", "P-0101", 1, 3), billed("L5679", "C-71", 1, 3), SignForm::check,
           Line::solid, said("Both books agree.")},
          {handed("SN03-M", "P-0102", 2, 5), billed("L5685", "C-72", 1, 5), SignForm::triangle,
           Line::dashed, said("One piece less is billed than was handed out.")},
          {handed("PN02", "P-0103", 1, 9), empty_side(said("no claim line")), SignForm::cross,
           Line::dotted, said("Handed out, and not billed: bill it, or answer why not.")},
          {empty_side(said("nothing handed out")), billed("L8420", "C-75", 1, 12), SignForm::cross,
           Line::dotted, said("Billed, and not handed out: correct the claim, or the record.")}};
}

std::string pair_sentence(const BookPair& pair) {
  return say("{} Handed out: {} Billed: {}", pair.verdict, box_words(pair.handed_out),
             box_words(pair.billed));
}

/// Draws both books into one room.
class BooksDrawing {
 public:
  BooksDrawing(const std::vector<BookPair>& pairs, const Room& room) : pairs_{pairs}, room_{room} {
    made_.width = room.width;
    edge_ = diagram_edge * room.unit;
    const double gap = std::clamp(0.12 * room.width, 56 * room.unit, 90 * room.unit);
    column_ = (room.width - 2 * edge_ - gap) / 2;
    right_ = edge_ + column_ + gap;
  }

  Picture draw() {
    made_.table.headings = {say("Handed out"), say("Billed"), say("Finding")};
    const double left_end =
        add_text(made_, room_, said("Handed out"), {edge_, edge_}, column_, true);
    const double right_end = add_text(made_, room_, said("Billed"), {right_, edge_}, column_, true);
    double top = std::max(left_end, right_end) + 4 * room_.unit;
    for (std::size_t i = 0; i < pairs_.size(); ++i) top = add_pair(i, top);
    made_.height = top;
    return std::move(made_);
  }

 private:
  /// Gives the height at which the next begins.
  double add_pair(std::size_t number, double top) {
    const auto& pair = pairs_[number];
    const double height = std::max(box_height(room_, pair.handed_out, column_),
                                   box_height(room_, pair.billed, column_));
    const Area left{edge_, top, edge_ + column_, top + height};
    const Area right{right_, top, right_ + column_, top + height};
    const double middle = top + height / 2;
    const Ink ink = pair.agrees() ? Ink::text : Ink::alarm;
    add_line(made_, {left.right, middle}, {right.left, middle}, ink, 1.5, pair.line);
    add_lone_sign(made_, room_, {(left.right + right.left) / 2, middle}, pair.sign, ink);
    add_word_box(made_, room_, left, pair.handed_out, fmt::format("handed out {}", number + 1));
    add_word_box(made_, room_, right, pair.billed, fmt::format("billed {}", number + 1));
    for (auto stop = made_.stops.end() - 2; stop != made_.stops.end(); ++stop) {
      stop->words = pair_sentence(pair);
    }
    const double below = add_text(made_, room_, pair.verdict, {edge_, left.bottom + 3 * room_.unit},
                                  room_.width - 2 * edge_, false, ink);
    made_.words += pair_sentence(pair) + '\n';
    made_.table.rows.push_back({box_words(pair.handed_out), box_words(pair.billed), pair.verdict});
    return below + 12 * room_.unit;
  }

  const std::vector<BookPair>& pairs_;
  const Room& room_;
  Picture made_;
  double edge_ = 0;
  double column_ = 0;
  double right_ = 0;
};

}  // namespace

Maker billing_example() {
  return as_example(
      [pairs = book_pairs()](const Room& room) {
        return BooksDrawing{pairs, room}.draw();
      },
      said("Help with billing: an example"),
      said("An example: what was handed out beside what was billed"));
}

}  // namespace sparewell::desk
