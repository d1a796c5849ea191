#include "desk/limb_drawing/chain_rows.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/flow.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/life_picture.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

/// Wider rows have their strips beside the words.
constexpr double least_for_beside = 560;
constexpr double pad = 4;
constexpr double further_indent = 14;
constexpr double row_gap = 3;

struct StandingSign {
  SignForm form;
  Ink ink;
  bool filled;
};

StandingSign sign_of(Standing standing) {
  switch (standing) {
    case Standing::good:
      return {SignForm::check, Ink::text, true};
    case Standing::told:
      return {SignForm::ring, Ink::text, false};
    case Standing::not_known:
      return {SignForm::question, Ink::text, false};
    case Standing::look:
      return {SignForm::triangle, Ink::alarm, true};
    default:
      return {SignForm::cross, Ink::alarm, true};
  }
}

double words_left(const Room& room, const RowPlan& plan, const ChainRow& row) {
  return plan.left + (pad + (row.further ? further_indent : 0)) * room.unit;
}

double words_right(const Room& room, const RowPlan& plan) {
  return plan.strip_beside ? plan.strip_left - 8 * room.unit : plan.right - pad * room.unit;
}

std::vector<FlowPlace> verdict_places(const Room& room, const std::vector<ChainVerdict>& verdicts,
                                      double width) {
  std::vector<double> widths;
  for (const auto& each : verdicts) {
    widths.push_back(std::min(width, 26 * room.unit + room.text_width(each.words)));
  }
  return flow(widths, width);
}

/// What stands in the lines above the verdicts.
std::vector<std::string> text_of(const RowPlan& plan, const ChainRow& row) {
  if (row.missing()) return {};
  if (row.further) return {row.dates};
  if (plan.strip_beside) return {fmt::format("{}, {}", row.facts, row.dates)};
  return {row.facts, row.dates};
}

int lines_of(const Room& room, const RowPlan& plan, const ChainRow& row) {
  const double width = words_right(room, plan) - words_left(room, plan, row);
  const auto places = verdict_places(room, row.verdicts, width);
  const int verdicts = places.empty() ? 0 : static_cast<int>(places.back().line) + 1;
  const int strip = row.life && !plan.strip_beside ? 1 : 0;
  return 1 + static_cast<int>(text_of(plan, row).size()) + verdicts + strip;
}

/// A sign and words each, in as many lines as they need.
void add_verdicts(Picture& picture, const Room& room, const ChainRow& row, double left,
                  double right, double top) {
  const auto places = verdict_places(room, row.verdicts, right - left);
  for (std::size_t i = 0; i < places.size(); ++i) {
    const auto& verdict = row.verdicts[i];
    const auto sign = sign_of(verdict.standing);
    const double x = left + places[i].x;
    const double middle = top + (static_cast<double>(places[i].line) + 0.5) * room.line_height;
    picture.marks.emplace_back(
        Sign{{x + 5 * room.unit, middle}, sign.form, 5 * room.unit, sign.ink, sign.filled});
    add_words(picture, {{x + 14 * room.unit, middle},
                        verdict.words,
                        Across::left,
                        Down::middle,
                        verdict.standing >= Standing::look ? Ink::alarm : Ink::text,
                        false,
                        right - x - 14 * room.unit});
  }
}

void add_row_words(Picture& picture, const Room& room, const RowPlan& plan, const ChainRow& row,
                   double top) {
  const double left = words_left(room, plan, row);
  const double right = words_right(room, plan);
  double line = top + pad * room.unit;
  const auto add = [&](const std::string& text, bool strong) {
    add_words(picture, {{left, line + room.line_height / 2},
                        text,
                        Across::left,
                        Down::middle,
                        row.missing() ? Ink::alarm : Ink::text,
                        strong,
                        right - left});
    line += room.line_height;
  };
  add(row.further ? say("also: {}", row.title) : row.title, !row.further);
  for (const auto& text : text_of(plan, row)) add(text, false);
  add_verdicts(picture, room, row, left, right, line);
}

void add_strip(Picture& picture, const Room& room, const RowPlan& plan, const LifeDrawing& lives,
               const StripShape& life, double top, double bottom) {
  const double height = room.line_height;
  const double middle =
      plan.strip_beside ? (top + bottom) / 2 : bottom - pad * room.unit - height / 2;
  const double reach = height / 2 + 2 * room.unit;
  add_line(picture, {plan.strip_left, middle}, {plan.strip_right, middle}, Ink::faint);
  for (const auto& tick : lives.ticks) {
    add_line(picture, {tick.x, middle - reach / 2}, {tick.x, middle + reach / 2}, Ink::faint);
  }
  add_life(picture, room, life, middle, height);
  add_line(picture, {lives.today, middle - reach}, {lives.today, middle + reach}, Ink::text, 2);
}

void add_axis_words(Picture& picture, const Room& room, const RowPlan& plan,
                    const LifeDrawing& lives) {
  double free_from = plan.strip_left;
  for (const auto& tick : lives.ticks) {
    const double half = room.text_width(tick.label) / 2;
    if (tick.x - half < free_from || tick.x + half > plan.right) continue;
    add_words(picture, {{tick.x, plan.top - 2 * room.unit},
                        tick.label,
                        Across::middle,
                        Down::bottom,
                        Ink::text,
                        false,
                        0});
    free_from = tick.x + half + 6 * room.unit;
  }
}

}  // namespace

RowPlan plan_rows(const picture::Room& room, double left, double right, double top,
                  const SideChain& chain) {
  RowPlan plan;
  plan.left = left;
  plan.right = right;
  plan.top = top + room.line_height + 4 * room.unit;
  plan.strip_beside = right - left >= least_for_beside * room.unit;
  plan.strip_left = plan.strip_beside ? left + 0.58 * (right - left) : left + pad * room.unit;
  plan.strip_right = right - pad * room.unit;
  plan.tops = {plan.top};
  for (const auto& row : chain.rows) {
    const double height = lines_of(room, plan, row) * room.line_height + 2 * pad * room.unit;
    plan.tops.push_back(plan.tops.back() + height + row_gap * room.unit);
  }
  return plan;
}

void add_rows(picture::Picture& picture, const picture::Room& room, const RowPlan& plan,
              const SideChain& chain, Date today) {
  std::vector<StripEntry> entries;
  std::vector<std::size_t> rows;
  for (std::size_t i = 0; i < chain.rows.size(); ++i) {
    if (!chain.rows[i].life) continue;
    entries.push_back(*chain.rows[i].life);
    rows.push_back(i);
  }
  for (std::size_t i = 0; i < chain.rows.size(); ++i) {
    const auto& row = chain.rows[i];
    const Area area{plan.left, plan.tops[i], plan.right, plan.tops[i + 1] - row_gap * room.unit};
    const Line border = row.missing() ? Line::dashed : Line::solid;
    picture.marks.emplace_back(Box{area, row.missing() ? Ink::alarm : Ink::faint, Fill::none,
                                   border, row.missing() ? 2.0 : 1.0, 3 * room.unit});
    add_row_words(picture, room, plan, row, area.top);
    picture.stops.push_back({row.id, row.words, area});
  }
  if (entries.empty()) return;
  StripMeasures measures;
  measures.width = plan.strip_right;
  measures.label_width = plan.strip_left;
  measures.row_height = room.line_height;
  measures.tick_label_width = room.text_width("Mmm 0000");
  const auto lives = draw_lives(entries, today, measures);
  add_axis_words(picture, room, plan, lives);
  for (const auto& life : lives.rows) {
    add_strip(picture, room, plan, lives, life, plan.tops[rows[life.entry]],
              plan.tops[rows[life.entry] + 1] - row_gap * room.unit);
  }
}

}  // namespace sparewell::desk
