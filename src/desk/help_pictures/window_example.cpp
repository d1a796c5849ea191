#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/flow.hpp"
#include "desk/help_pictures/diagram.hpp"
#include "desk/help_pictures/examples.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/life_picture.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

/// Narrower pages, in heights of a line, have the details below the list.
constexpr double least_beside = 26;

std::vector<std::string> page_names() {
  return {said("Today"), said("Order today"), said("Patients"), said("Shelf"),
          said("Wear"),  said("Deliveries"),  said("Plan"),     said("Billing")};
}

/// The window with its places as boxes.
class WindowDrawing {
 public:
  explicit WindowDrawing(const Room& room) : room_{room} {
    made_.width = room.width;
    made_.table.headings = {say("Place"), say("What it is for")};
    edge_ = diagram_edge * room.unit;
    left_ = 2 * edge_;
    right_ = room.width - 2 * edge_;
    top_ = 2 * edge_;
  }

  Picture draw() {
    // Its height follows; what lies within it stands over it.
    made_.marks.emplace_back(Box{{}, Ink::text, Fill::none, Line::solid, 2, 6 * room_.unit});
    add_place("menus", {said("Menus (F10)"), said("Every command, with its key. F1: this help.")});
    add_place("search", {said("Box at the top (F3)"),
                         said("Finds patients, parts, lots, orders. A scan goes here too.")});
    add_tabs();
    const WordBox list{said("List (Ctrl+F finds in it)"),
                       said("One row for each thing. A click on a column's title orders it.")};
    const WordBox details{said("Details of the row that is chosen"),
                          said("Reasons, figures and a picture. Tab goes to them.")};
    add_list_and_details(list, details);
    add_place("status", {said("Line at the bottom"),
                         said("What is going on. Ctrl+Z takes the last thing back.")});
    const Area frame{edge_, edge_, room_.width - edge_, top_ + edge_ - gap()};
    std::get<Box>(made_.marks.front()).area = frame;
    made_.height = frame.bottom + edge_;
    return std::move(made_);
  }

 private:
  [[nodiscard]] double gap() const { return 7 * room_.unit; }

  void tell(const WordBox& box) {
    made_.words += box_words(box) + '\n';
    made_.table.rows.push_back({box.title, box.text});
  }

  void add_place(const std::string& id, WordBox box) {
    box.beside = true;
    const Area area{left_, top_, right_, top_ + box_height(room_, box, right_ - left_)};
    add_word_box(made_, room_, area, box, id);
    tell(box);
    top_ = area.bottom + gap();
  }

  [[nodiscard]] double drawn_height() const { return 2.6 * room_.line_height; }

  /// Three rows of a list at the bottom of its box, the second of them chosen.
  void add_rows(const Area& list) {
    const double step = drawn_height() / 3;
    const double left = list.left + gap();
    const double right = list.right - gap();
    for (int i = 0; i < 3; ++i) {
      const double top = list.bottom - gap() - (3 - i) * step;
      const double middle = top + step / 2;
      if (i == 1) {
        made_.marks.emplace_back(Box{{left, top, right, top + step},
                                     Ink::chosen,
                                     Fill::solid,
                                     Line::solid,
                                     1,
                                     2 * room_.unit});
      }
      add_line(made_, {left + gap(), middle}, {left + (0.9 - 0.15 * i) * (right - left), middle},
               i == 1 ? Ink::text : Ink::past, 2);
    }
  }

  /// A life as pictures of the program show it, at the bottom of the box of the details.
  void add_life_line(const Area& details) {
    const double left = details.left + gap();
    const double wide = details.right - gap() - left;
    StripShape life;
    life.worn = Stretch{left, left + 0.4 * wide, false, false};
    life.ahead = Stretch{left + 0.55 * wide, left + 0.9 * wide, false, false};
    life.median = left + 0.7 * wide;
    add_life(made_, room_, life, details.bottom - gap() - drawn_height() / 2, room_.line_height);
  }

  void add_list_and_details(const WordBox& list, const WordBox& details) {
    const bool beside = right_ - left_ >= least_beside * room_.line_height;
    const double wide = beside ? (right_ - left_ - gap()) / 2 : right_ - left_;
    double list_height = box_height(room_, list, wide) + drawn_height();
    double details_height = box_height(room_, details, wide) + drawn_height();
    if (beside) list_height = details_height = std::max(list_height, details_height);
    const Area first{left_, top_, left_ + wide, top_ + list_height};
    const double below = beside ? top_ : first.bottom + gap();
    const Area second{right_ - wide, below, right_, below + details_height};
    add_word_box(made_, room_, first, list, "list");
    add_rows(first);
    add_word_box(made_, room_, second, details, "details");
    add_life_line(second);
    tell(list);
    tell(details);
    top_ = second.bottom + gap();
  }

  /// The names of the pages as tabs, and below them what they are.
  void add_tabs() {
    const WordBox pages{said("Pages (F2, Ctrl+1, Ctrl+2...)"),
                        said("One for each job. The number behind a name counts what is to do.")};
    const double pad = 6 * room_.unit;
    const double high = room_.line_height + 8 * room_.unit;
    const auto names = page_names();
    std::vector<double> widths;
    for (const auto& name : names) {
      // The first is the one that is open, in bold letters.
      const double spread = widths.empty() ? 1.15 : 1.05;
      widths.push_back(spread * room_.text_width(name) + 2 * pad + 4 * room_.unit);
    }
    const auto places = flow(widths, right_ - left_);
    double below = top_;
    for (std::size_t i = 0; i < names.size(); ++i) {
      const double x = left_ + places[i].x;
      const double y = top_ + places[i].line * (high + 3 * room_.unit);
      const double end = std::min(right_, x + widths[i] - 4 * room_.unit);
      const bool open = i == 0;
      made_.marks.emplace_back(Box{{x, y, end, y + high},
                                   open ? Ink::text : Ink::past,
                                   Fill::none,
                                   Line::solid,
                                   open ? 2.0 : 1.0,
                                   3 * room_.unit});
      add_words(made_, {{x + pad, y + high / 2},
                        names[i],
                        Across::left,
                        Down::middle,
                        Ink::text,
                        open,
                        end - x - pad});
      below = y + high;
    }
    top_ = below + 3 * room_.unit;
    add_place("pages", pages);
  }

  const Room& room_;
  Picture made_;
  double edge_ = 0;
  double left_ = 0;
  double right_ = 0;
  double top_ = 0;  ///< of what comes next
};

}  // namespace

Maker window_example() {
  return as_example([](const Room& room) { return WindowDrawing{room}.draw(); },
                    said("Help with the window: an example"),
                    said("The places of the window, and the keys that lead to them"));
}

}  // namespace sparewell::desk
