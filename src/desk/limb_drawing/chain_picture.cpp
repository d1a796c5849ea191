#include "desk/limb_drawing/chain_picture.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/limb_drawing/chain_rows.hpp"
#include "desk/limb_drawing/limb_outline.hpp"
#include "desk/patient_card.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/life_picture.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using namespace picture;

/// Panels narrower than this stand below each other.
constexpr double least_panel = 330;
constexpr double most_outline = 190;

std::string side_title(Side side) {
  return side == Side::left ? say("Left") : say("Right");
}

FigureTable table_of(const std::vector<SideChain>& chains) {
  FigureTable table;
  table.headings = {say("Side"),   say("Part"), say("Facts"),   say("Worn out, early"),
                    say("Middle"), say("Late"), say("Verdicts")};
  for (const auto& chain : chains) {
    for (const auto& row : chain.rows) {
      std::string verdicts;
      for (const auto& each : row.verdicts) {
        verdicts += fmt::format("{}{}", verdicts.empty() ? "" : "; ", each.words);
      }
      const auto life = row.life.value_or(StripEntry{});
      table.rows.push_back({side_title(chain.side), row.title,
                            fmt::format("{}, {}", row.facts, row.dates), date_words(life.p10, ""),
                            date_words(life.p50, ""), date_words(life.p90, ""), verdicts});
    }
  }
  return table;
}

std::string words_of(const std::vector<SideChain>& chains) {
  std::string text;
  for (const auto& chain : chains) {
    text += fmt::format("{}: {}.\n", side_title(chain.side), chain.held_by);
    if (chain.rows.empty()) text += fmt::format("{}\n", said("No part is recorded as in use."));
    for (const auto& row : chain.rows) text += fmt::format("{}\n", row.words);
  }
  if (chains.empty()) {
    text = fmt::format("{}\n", said("No prosthesis and no part in use is recorded."));
  }
  return text + care_caution();
}

/// Gives the height of its end.
double add_panel(Picture& picture, const Room& room, const Area& area, const SideChain& chain,
                 Date today) {
  const double gap = 8 * room.unit;
  const double wide = area.right - area.left;
  const double first = area.top + room.line_height + 4 * room.unit;
  add_words(picture, {{area.left, area.top},
                      fmt::format("{}: {}", side_title(chain.side), chain.held_by),
                      Across::left,
                      Down::top,
                      Ink::text,
                      true,
                      wide});
  const double outline = std::min(most_outline * room.unit, 0.28 * wide);
  const auto plan = plan_rows(room, area.left + outline + 3 * gap, area.right, first, chain);
  const double bottom = std::max(plan.tops.back(), first + 14 * room.line_height);
  const Area drawn{area.left, first, area.left + outline, std::min(bottom, first + 2.6 * outline)};
  add_outline(picture, room, drawn, chain);
  for (std::size_t i = 0; i < chain.rows.size(); ++i) {
    const auto& row = chain.rows[i];
    if (row.further || row.place == ChainPlace::not_known) continue;
    const auto seat = seat_of(drawn, chain, row.place);
    const double y = plan.tops[i] + 0.5 * room.line_height + 4 * room.unit;
    const Ink ink = row.missing() ? Ink::alarm : Ink::faint;
    const Line line = row.missing() ? Line::dashed : Line::solid;
    picture.marks.emplace_back(
        Stroke{{seat, {plan.left - 2 * gap, y}, {plan.left, y}}, ink, line, room.unit});
    picture.marks.emplace_back(Sign{seat, SignForm::disc, 3 * room.unit,
                                    row.missing() ? Ink::alarm : Ink::text, !row.missing()});
  }
  add_rows(picture, room, plan, chain, today);
  if (chain.rows.empty()) {
    add_words(picture, {{plan.left, plan.top},
                        said("No part is recorded as in use."),
                        Across::left,
                        Down::top,
                        Ink::text,
                        false,
                        area.right - plan.left});
  }
  return bottom;
}

Picture draw(const std::vector<SideChain>& chains, const std::string& reference, Date today,
             const Room& room) {
  Picture picture;
  picture.width = room.width;
  picture.title = say("What holds the limbs of {} on, {}", reference, date_words(today));
  picture.words = words_of(chains);
  picture.table = table_of(chains);
  const double edge = 6 * room.unit;
  if (chains.empty()) {
    add_words(picture, {{edge, edge},
                        said("No prosthesis and no part in use is recorded."),
                        Across::left,
                        Down::top,
                        Ink::text,
                        false,
                        room.width - 2 * edge});
    picture.height = room.line_height + 2 * edge;
    return picture;
  }
  const double gap = 14 * room.unit;
  const double half = (room.width - 2 * edge - gap) / 2;
  const bool beside = chains.size() > 1 && half >= least_panel * room.unit;
  const double wide = beside ? half : room.width - 2 * edge;
  double bottom = edge;
  double left = edge;
  for (const auto& chain : chains) {
    const double top = beside ? edge : bottom + (bottom > edge ? gap : 0);
    bottom =
        std::max(bottom, add_panel(picture, room, {left, top, left + wide, top}, chain, today));
    if (beside) left += wide + gap;
  }
  picture.height = add_key(picture, room, life_key(room.unit), bottom + gap / 2) + edge;
  return picture;
}

}  // namespace

picture::Maker chain_picture(std::vector<SideChain> chains, std::string reference, Date today) {
  return [chains = std::move(chains), reference = std::move(reference),
          today](const picture::Room& room) { return draw(chains, reference, today, room); };
}

}  // namespace sparewell::desk
