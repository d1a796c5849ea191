#include "desk/limb_drawing/chain_rows.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/life_picture.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

/// Wider rows have their strips beside the words.
constexpr double least_for_beside = 560;
constexpr double pad = 4;
constexpr double further_indent = 14;

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

/// Sign and words one after the other; what has no room any more is counted, the gravest stay.
void add_verdicts(Picture& picture, const Room& room, const std::vector<ChainVerdict>& verdicts,
                  double left, double right, double middle) {
  double x = left;
  for (std::size_t i = 0; i < verdicts.size(); ++i) {
    const auto& verdict = verdicts[i];
    const double needed = 16 * room.unit + room.text_width(verdict.words);
    const auto more = say("+{} more", verdicts.size() - i);
    const bool last = i + 1 == verdicts.size();
    if (i > 0 && x + needed + (last ? 0 : room.text_width(more)) > right) {
      add_words(picture, {{x, middle}, more, Across::left, Down::middle, Ink::text, false, 0});
      return;
    }
    const auto sign = sign_of(verdict.standing);
    picture.marks.emplace_back(
        Sign{{x + 5 * room.unit, middle}, sign.form, 5 * room.unit, sign.ink, sign.filled});
    const bool grave = verdict.standing >= Standing::look;
    add_words(picture, {{x + 14 * room.unit, middle},
                        verdict.words,
                        Across::left,
                        Down::middle,
                        grave ? Ink::alarm : Ink::text,
                        false,
                        right - x - 14 * room.unit});
    x += needed + 12 * room.unit;
  }
}

void add_row_words(Picture& picture, const Room& room, const RowPlan& plan, const ChainRow& row,
                   double top) {
  const double left = plan.left + (pad + (row.further ? further_indent : 0)) * room.unit;
  const double right = plan.strip_beside ? plan.strip_left - 8 * room.unit : plan.right - pad;
  const auto line = [&](int number) {
    return top + pad * room.unit + (number + 0.5) * room.line_height;
  };
  const auto title = row.further ? say("also: {}", row.title) : row.title;
  add_words(picture, {{left, line(0)},
                      title,
                      Across::left,
                      Down::middle,
                      row.missing() ? Ink::alarm : Ink::text,
                      true,
                      right - left});
  if (!row.facts.empty()) {
    add_words(
        picture,
        {{left, line(1)}, row.facts, Across::left, Down::middle, Ink::text, false, right - left});
  }
  add_verdicts(picture, room, row.verdicts, left, right, line(row.missing() ? 1 : 2));
}

void add_strip(Picture& picture, const Room& room, const RowPlan& plan, const LifeDrawing& lives,
               const StripShape& life, double top) {
  const double height = room.line_height;
  const double middle = plan.strip_beside ? top + plan.row_height / 2
                                          : top + pad * room.unit + 3.5 * room.line_height;
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

RowPlan plan_rows(const picture::Room& room, double left, double right, double top) {
  RowPlan plan;
  plan.left = left;
  plan.right = right;
  plan.top = top + room.line_height + 4 * room.unit;
  plan.strip_beside = right - left >= least_for_beside * room.unit;
  plan.row_height = (plan.strip_beside ? 3 : 4) * room.line_height + 2 * pad * room.unit + 4;
  plan.strip_left = plan.strip_beside ? left + 0.58 * (right - left) : left + pad * room.unit;
  plan.strip_right = right - pad * room.unit;
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
    const Area area{plan.left, plan.row_top(i), plan.right,
                    plan.row_top(i) + plan.row_height - 3 * room.unit};
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
    add_strip(picture, room, plan, lives, life, plan.row_top(rows[life.entry]));
  }
}

}  // namespace sparewell::desk
