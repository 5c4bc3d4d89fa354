#include "tests/bench/made_register.h"

#include <fstream>
#include <random>
#include <string>

namespace bench {

namespace {

std::string word(std::mt19937& dice, std::size_t length)
{
    std::string letters;
    for (std::size_t i = 0; i < length; ++i)
        letters += static_cast<char>('A' + dice() % 26);
    return letters;
}

}  // namespace

void writeMadeRegister(const std::filesystem::path& folder, int makers)
{
    std::mt19937 dice(1921);
    std::ofstream firms(folder / "makers.csv"), marks(folder / "marks.csv"),
        spellings(folder / "spellings.csv");
    spellings << "text,same_as\nLTD,LIMITED\nCO,COMPANY\n&,AND\n";
    firms << "maker_id,name,place,from,to,successor_of,notes,source_id\n";
    marks << "maker_id,text,kind,frame,from,to,notes,source_id\n";
    for (int i = 0; i < makers; ++i) {
        const std::string id = "m" + std::to_string(i);
        const std::string name = word(dice, 7) + " " + std::to_string(i);
        const int from = 1900 + static_cast<int>(dice() % 40);
        const int to = from + 5 + static_cast<int>(dice() % 20);
        firms << id << "," << name << " & Co,Saltmere," << from << "," << to << "~,"
              << (i % 9 == 8 ? "m" + std::to_string(i - 1) : "") << ",,\n";
        marks << id << "," << name << " & CO LTD,text,none," << from << "," << to << "~,,\n"
              << id << "," << word(dice, 1) << "." << word(dice, 1) << ". & CO,text,box,"
              << from + 1 << ",,,\n"
              << id << "," << word(dice, 1) << dice() % 100 << ",code,,,,,\n";
    }
}

}  // namespace bench
