#include "tests/bench/trade_files.h"

#include <fstream>

void writeTrade(const std::filesystem::path& folder, const SimulatedTrade& trade)
{
    std::ofstream makers(folder / "makers.csv"), marks(folder / "marks.csv"),
        spellings(folder / "spellings.csv");
    makers << "maker_id,name,from,to\n";
    for (const models::Maker& maker : trade.known.makers)
        makers << maker.maker_id << "," << maker.name << " (" << maker.maker_id << "),"
               << maker.from << "," << maker.to << "\n";
    marks << "maker_id,text\n";
    for (const models::Mark& mark : trade.known.marks)
        marks << mark.maker_id << "," << mark.text << "\n";
    spellings << "text,same_as\n";
    for (const models::Spelling& spelling : trade.known.spellings)
        spellings << spelling.text << "," << spelling.same_as << "\n";
}
