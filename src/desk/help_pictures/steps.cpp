#include "desk/help_pictures/steps.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

constexpr double across_gap = 34;
constexpr double down_gap = 24;
constexpr double between_boxes = 10;
constexpr double tree_indent = 30;
/// Narrower columns, in heights of a line, are set below each other.
constexpr double least_column = 8.5;

std::string step_id(std::size_t stage, std::size_t box) {
  return fmt::format("step {}.{}", stage + 1, box + 1);
}

/// Draws the boxes of one diagram into one room.
class StepDrawing {
 public:
  StepDrawing(const StepDiagram& steps, const Room& room) : steps_{steps}, room_{room} {
    made_.width = room.width;
    edge_ = diagram_edge * room.unit;
    const auto stages = static_cast<double>(steps.stages.size());
    column_ = (room.width - 2 * edge_ - (stages - 1) * across_gap * room.unit) / stages;
  }

  Picture draw() {
    if (column_ >= least_column * room_.line_height) {
      draw_across();
    } else {
      draw_down();
    }
    say_all();
    return std::move(made_);
  }

 private:
  [[nodiscard]] double height(const WordBox& box, double width) const {
    return box_height(room_, box, width);
  }

  [[nodiscard]] double stage_height(const std::vector<WordBox>& boxes) const {
    double sum = between_boxes * room_.unit * (static_cast<double>(boxes.size()) - 1);
    for (const auto& box : boxes) sum += height(box, column_);
    return sum;
  }

  void draw_across() {
    double highest = 0;
    for (const auto& stage : steps_.stages) highest = std::max(highest, stage_height(stage));
    Area before{};
    Area last{};
    double left = edge_;
    for (std::size_t i = 0; i < steps_.stages.size(); ++i) {
      const auto& boxes = steps_.stages[i];
      double top = edge_ + (highest - stage_height(boxes)) / 2;
      before = last;
      for (std::size_t j = 0; j < boxes.size(); ++j) {
        const Area area{left, top, left + column_, top + height(boxes[j], column_)};
        if (i > 0) arrow_across(before, area);
        add_word_box(made_, room_, area, boxes[j], step_id(i, j));
        top = area.bottom + between_boxes * room_.unit;
        last = area;
      }
      left += column_ + across_gap * room_.unit;
    }
    made_.height = highest + 2 * edge_;
    if (steps_.back) back_across(last, before);
  }

  void arrow_across(const Area& from, const Area& to) {
    const double middle = (from.right + to.left) / 2 - 3 * room_.unit;
    const double y = (from.top + from.bottom) / 2;
    double there = (to.top + to.bottom) / 2;
    if (std::abs(there - y) < 2 * room_.unit) there = y;
    add_arrow(made_, room_, {{from.right, y}, {middle, y}, {middle, there}, {to.left, there}});
  }

  /// Below both boxes.
  void back_across(const Area& from, const Area& to) {
    const double x = (from.left + from.right) / 2;
    const double target = (to.left + to.right) / 2;
    const double below = made_.height + 6 * room_.unit;
    add_arrow(made_, room_, {{x, from.bottom}, {x, below}, {target, below}, {target, to.bottom}},
              Line::dashed);
    made_.height = below + edge_;
  }

  void draw_down() {
    const double right = room_.width - edge_ - (steps_.back ? tree_indent * room_.unit : 0);
    double top = edge_;
    Area before{};
    Area last{};
    for (std::size_t i = 0; i < steps_.stages.size(); ++i) {
      const auto& boxes = steps_.stages[i];
      const double left = edge_ + (boxes.size() > 1 ? tree_indent * room_.unit : 0);
      before = last;
      for (std::size_t j = 0; j < boxes.size(); ++j) {
        const Area area{left, top, right, top + height(boxes[j], right - left)};
        if (i > 0) arrow_down(before, area, boxes.size() > 1);
        add_word_box(made_, room_, area, boxes[j], step_id(i, j));
        top = area.bottom + between_boxes * room_.unit;
        last = area;
      }
      const bool many_follow = i + 1 < steps_.stages.size() && steps_.stages[i + 1].size() > 1;
      top = last.bottom + (many_follow ? between_boxes : down_gap) * room_.unit;
    }
    if (steps_.back) back_down(last, before);
    made_.height = last.bottom + edge_;
  }

  /// From above, or from a trunk on the left into one of several.
  void arrow_down(const Area& from, const Area& to, bool of_several) {
    if (!of_several) {
      const double x = (to.left + to.right) / 2;
      add_arrow(made_, room_, {{x, from.bottom}, {x, to.top}});
      return;
    }
    const double x = from.left + tree_indent / 3 * room_.unit;
    const double y = (to.top + to.bottom) / 2;
    add_arrow(made_, room_, {{x, from.bottom}, {x, y}, {to.left, y}});
  }

  /// Right of both boxes.
  void back_down(const Area& from, const Area& to) {
    const double x = from.right + 0.7 * tree_indent * room_.unit;
    const double y = (from.top + from.bottom) / 2;
    const double there = (to.top + to.bottom) / 2;
    add_arrow(made_, room_, {{from.right, y}, {x, y}, {x, there}, {to.right, there}}, Line::dashed);
  }

  void say_all() {
    made_.table.headings = {say("Step"), say("What"), say("Figures"), say("Leads to")};
    for (std::size_t i = 0; i < steps_.stages.size(); ++i) {
      std::vector<std::string> next;
      if (i + 1 < steps_.stages.size()) {
        for (const auto& box : steps_.stages[i + 1]) next.push_back(box.title);
      }
      for (const auto& box : steps_.stages[i]) {
        made_.words += next.empty() ? fmt::format("{}\n", box_words(box))
                                    : say("{} Leads to: {}.\n", box_words(box), list_words(next));
        made_.table.rows.push_back(
            {number_words(static_cast<long long>(i) + 1), box.title, box.text, list_words(next)});
      }
    }
    if (!steps_.back || steps_.stages.size() < 2) return;
    const auto& to = (steps_.stages.end() - 2)->front().title;
    made_.words += say("From there it goes back to: {}.\n", to);
    made_.table.rows.back().back() = to;
  }

  const StepDiagram& steps_;
  const Room& room_;
  Picture made_;
  double edge_ = 0;
  double column_ = 0;
};

}  // namespace

Maker steps_picture(StepDiagram steps) {
  return [steps = std::move(steps)](const Room& room) { return StepDrawing{steps, room}.draw(); };
}

}  // namespace sparewell::desk
